#include <cmath>

#include "backspring/action/end_stop.hpp"
#include "backspring/action/reading.hpp"
#include "backspring/action/rest.hpp"
#include "backspring/action/unloaded_readings.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/design/joint_of.hpp"
#include "catch.hpp"
#include "designs.hpp"
#include "several_blades.hpp"

using namespace backspring;

namespace {

constexpr double kThou = 0.0254;

Design on_stop(Design design, StopPlace place, double friction = 0.0) {
    design.own().fit.stop = {.place = place, .friction = friction};
    return design;
}

Design with_face(StopPlace place, double face_mm) {
    Design design = on_stop(designs::heron(), place);
    design.own().fit.stop.face_mm = face_mm;
    return design;
}

struct Effect {
    double force;  ///< all that presses the spring outward, against that without the stop
    double thou;   ///< of every loaded reading
};

Effect effect(const Design& design) {
    const Joint plain = make_joint(designs::heron()), joint = make_joint(design);
    const Contact without = open_on_stop(plain), open = open_on_stop(joint);
    const double outward = open.force_n + joint.stop->friction * open.stop.force_n;
    return {outward / without.force_n - 1.0,
            (deflection_mm(plain, without, 33.5) - deflection_mm(joint, open, 33.5)) / kThou};
}

/// The stop's force where its face stands in the end just as deep as that gives way.
Contact on_face(const Joint& joint, double angle) {
    double low = 0.0, high = 200.0;
    for (int i = 0; i < 200; ++i) {
        const double force = 0.5 * (low + high);
        const Contact contact = contact_on_stop(joint, angle, force);
        const bool deep = stop_overlap_mm(joint, angle) > end_gives_way_mm(joint, contact);
        (deep ? low : high) = force;
    }
    return contact_on_stop(joint, angle, 0.5 * (low + high));
}

}  // namespace

// Nonlinear beam with stop and friction (tests/oracle): within a tenth of each entry, and half of
// its last digit.
TEST_CASE("a stop changes force and readings at open as a nonlinear beam says", "[stop]") {
    const auto near = [](double entry, double digit) {
        return WithinAbs(entry, 0.1 * std::abs(entry) + 0.5 * digit);
    };
    const Design heron = designs::heron();
    const Effect back = effect(on_stop(heron, StopPlace::back));
    const Effect middle = effect(on_stop(heron, StopPlace::middle));
    const Effect belly = effect(on_stop(heron, StopPlace::belly));
    CHECK_THAT(back.force, near(-0.0275, 0.001));
    CHECK_THAT(middle.force, near(0.0072, 0.001));
    CHECK_THAT(belly.force, near(0.0664, 0.001));
    CHECK_THAT(back.thou, near(-0.219, 0.01));
    CHECK_THAT(middle.thou, near(-0.046, 0.01));
    CHECK_THAT(belly.thou, near(0.250, 0.01));
    CHECK_THAT(effect(on_stop(heron, StopPlace::back, 0.12)).thou, near(-0.309, 0.01));
    CHECK_THAT(effect(on_stop(heron, StopPlace::belly, -0.12)).thou, near(0.693, 0.01));
}

// The same, the stop's face where the end met it with the rear pin out: 180.179, 180.069, 179.942
// deg. Large turns are in those to second order only; 0.02 deg is a tenth of the greatest.
TEST_CASE("a blade leans as far beyond open as the spring's end lets it", "[stop]") {
    const auto angle = [](StopPlace place) {
        return open_on_stop(make_joint(with_face(place, 4.5))).blade_angle_deg;
    };
    CHECK_THAT(angle(StopPlace::back), WithinAbs(180.179, 0.02));
    CHECK_THAT(angle(StopPlace::middle), WithinAbs(180.069, 0.02));
    CHECK_THAT(angle(StopPlace::belly), WithinAbs(179.942, 0.02));
    CHECK_THAT(effect(with_face(StopPlace::back, 4.5)).thou, WithinAbs(0.396, 0.04));
    CHECK_THAT(effect(with_face(StopPlace::belly, 4.5)).thou, WithinAbs(0.049, 0.04));
}

// The same beam: 71.516, 74.663, 79.650 N. Slopes of 0.07 make 0.24 % of a force; a stop that
// pressed along the spring whichever way its face leans would be 0.3 % off at the back.
TEST_CASE("a stop presses square to its face", "[stop]") {
    const auto force = [](StopPlace place) {
        return open_on_stop(make_joint(with_face(place, 4.5))).force_n;
    };
    CHECK_THAT(force(StopPlace::back), WithinRel(71.516, 1.5e-3));
    CHECK_THAT(force(StopPlace::middle), WithinRel(74.663, 1.5e-3));
    CHECK_THAT(force(StopPlace::belly), WithinRel(79.650, 1.5e-3));
}

TEST_CASE("a blade that lies down on its flat before the stop stays there", "[stop]") {
    Design design = with_face(StopPlace::back, 4.52);
    design.own().fit.preload_mm = 0.225;
    const Joint joint = make_joint(design);
    const Contact open = open_on_stop(joint);
    CHECK(open.stop.force_n == 0.0);
    CHECK_THAT(open.torque_nmm, WithinAbs(0.0, 1e-9 * open.force_n));
    const double angle = open.blade_angle_deg;
    CHECK(contact_at(joint, angle - 0.01).torque_nmm < 0.0);
    CHECK(contact_at(joint, angle + 0.01).torque_nmm > 0.0);
    CHECK(stop_overlap_mm(joint, angle) < end_gives_way_mm(joint, open));
}

TEST_CASE("an axial push on a uniform cantilever bends it by its couple", "[stop][closed form]") {
    const Design dunlin = designs::dunlin();
    const Flexibility flexibility = make_flexibility(dunlin.spring);
    const double lever = 0.7, length = 36.5, e = dunlin.spring.elastic.youngs_modulus_mpa;
    const double inertia = 2.3 * 2.6 * 2.6 * 2.6 / 12.0;
    const auto even = [&](double) { return lever; };
    const AxialPush push = make_axial_push(dunlin.spring, flexibility, length, even);
    for (const double x : {5.0, 17.3, 36.5}) {
        const Compliance found = push_compliance(flexibility, push, x);
        CHECK_THAT(found.mm_per_n, WithinRel(lever * x * x / (2.0 * e * inertia), 1e-12));
        CHECK_THAT(found.rad_per_n, WithinRel(lever * x / (e * inertia), 1e-12));
    }
    const double beyond = push_compliance(flexibility, push, 40.0).mm_per_n;
    CHECK_THAT(beyond, WithinRel(lever * length * (40.0 - length / 2.0) / (e * inertia), 1e-12));
    const double way = lever * lever * length / (e * inertia) + length / (e * 2.3 * 2.6);
    CHECK_THAT(push.own_mm_per_n, WithinRel(way, 1e-12));
}

TEST_CASE("an open blade on its stop is in balance", "[stop][closed form]") {
    for (const StopPlace place : {StopPlace::back, StopPlace::middle, StopPlace::belly}) {
        const Joint joint = make_joint(on_stop(designs::heron(), place, 0.1));
        const Contact open = open_on_stop(joint);
        const double ahead = joint.pad.end_mm - joint.pivot_mm;
        const double lever = joint.stop->height_mm + 0.1 * ahead;
        CHECK(open.stop.force_n > 0.0);
        CHECK_THAT(open.stop.force_n * lever, WithinRel(-open.torque_nmm, 1e-13));
        CHECK_THAT(open.stop.lever_mm, WithinRel(lever, 1e-15));
    }
}

// The stop's face holds the end at its place, so its force works as the blade turns.
TEST_CASE("torque of contact and stop is dU/dtheta", "[stop][property]") {
    for (const StopPlace place : {StopPlace::back, StopPlace::middle, StopPlace::belly}) {
        const Joint joint = make_joint(with_face(place, 4.52));
        const double open = open_on_stop(joint).blade_angle_deg;
        for (const double beyond : {-0.003, 0.0, 0.01}) {
            const double angle = open + beyond, h = 2e-4;
            const auto energy = [&](double by) { return on_face(joint, angle + by).energy_nmm; };
            const double rate = (8.0 * (energy(h) - energy(-h)) - energy(2 * h) + energy(-2 * h)) /
                                (12.0 * radians(h));
            const Contact contact = on_face(joint, angle);
            const double torque = contact.torque_nmm + contact.stop.force_n * contact.stop.lever_mm;
            // Against the torque that the stop holds; differences of an energy of 30 N mm.
            CHECK_THAT(torque, WithinAbs(rate, 1e-6 * std::abs(contact.torque_nmm)));
        }
        const Contact rest = on_face(joint, open);
        CHECK_THAT(rest.torque_nmm + rest.stop.force_n * rest.stop.lever_mm,
                   WithinAbs(0.0, 1e-9 * std::abs(rest.torque_nmm)));
    }
}

TEST_CASE("without a stated stop nothing changes", "[stop][property]") {
    const Joint joint = make_joint(designs::heron());
    CHECK_FALSE(joint.stop);
    CHECK(open_on_stop(joint).force_n == contact_at(joint, 180.0).force_n);
    CHECK(open_on_stop(joint).stop.force_n == 0.0);
}

TEST_CASE("a blade that the spring does not press on leaves its stop alone", "[stop]") {
    Design design = on_stop(designs::heron(), StopPlace::middle);
    design.own().tang.corner_open_mm = 4.0;
    design.own().tang.half_stop_mm = 4.0;
    design.own().pad = {32.5, 36.5};
    const Contact open = open_on_stop(make_joint(design));
    CHECK(open.torque_nmm >= 0.0);
    CHECK(open.stop.force_n == 0.0);
}

// Rear pin out: a face set ahead by s lets the blade turn on by s over the stop's height.
TEST_CASE("the stop's face sets where the unloaded blade stands", "[stop][closed form]") {
    const Joint fitted = make_unloaded_joint(with_face(StopPlace::middle, 4.5));
    CHECK_THAT(fitted.open_deg, WithinAbs(180.0, 1e-12));
    const Design ahead = with_face(StopPlace::middle, 4.55);
    const Joint turned = make_unloaded_joint(ahead);
    const double small = degrees(0.05 / 5.75);
    CHECK_THAT(turned.open_deg - 180.0, WithinRel(small, 0.03));
    const Readings even = unloaded_readings(fitted, ahead.own().tang);
    const Readings lower = unloaded_readings(turned, ahead.own().tang);
    // The straight spring then lies on the open face at its own end.
    const double turn = radians(turned.open_deg - 180.0);
    const double lift = 4.5 / std::cos(turn) + 4.5 * std::tan(turn) - 4.5;
    CHECK_THAT(*even.closed_mm - *lower.closed_mm, WithinRel(lift * 33.5 / 36.5, 1e-9));
}

// Moments about the rear pin and forces, the stop's among them.
TEST_CASE("pins hold an open blade's spring with its stop", "[stop][closed form]") {
    // Friction at the end's face lifts or holds down the end: a load across, at the end.
    for (const double friction : {0.0, 0.12, -0.12}) {
        CAPTURE(friction);
        const Design design = on_stop(designs::heron(), StopPlace::belly, friction);
        const Joint joint = make_joint(design);
        const Contact open = open_on_stop(joint);
        const OpenPinForces pins = open_pin_forces(design.spring, joint, open);
        const double lever = joint.stop->push.root_lever_mm(), force = open.stop.force_n;
        const double at_end = friction * force;
        const double rear =
            (open.force_n * open.touches[0].x_mm + at_end * 36.5 + force * lever) / 34.0;
        CHECK_THAT(pins.across.rear_n, WithinRel(rear, 1e-12));
        CHECK_THAT(pins.across.middle_n, WithinRel(open.force_n + at_end + rear, 1e-12));
        CHECK(pins.along_n == force);
    }
}

TEST_CASE("the stop's moment and thrust are in the stress at open", "[stop][closed form]") {
    const Design design = on_stop(designs::dunlin(), StopPlace::back);
    const Action action =
        make_action(design.spring, make_joint(design), make_stress_probe(design), design.friction);
    const Contact open = open_on_stop(action.joint);
    const double section = 2.3 * 2.6 * 2.6 / 6.0;
    const double moment = open.force_n * open.touches[0].x_mm +
                          open.stop.force_n * action.joint.stop->push.root_lever_mm();
    const double stress = moment / section + open.stop.force_n / (2.3 * 2.6);
    const PeakStress peak = peak_stress(action, open);
    CHECK_THAT(peak.stress_mpa, WithinRel(stress, 1e-12));
    CHECK(peak.station_mm == 0.0);
}

// A second blade so light that it hardly bears leaves the first as it is alone.
TEST_CASE("beside another blade the stop presses as on a spring of its own", "[stop][property]") {
    Design two = designs::bunting(SupportKind::two_pins);
    REQUIRE(two.blades.size() == 2);
    two.own().fit.stop = {.place = StopPlace::back};
    const Joint joint = make_joint(two);
    const Contact open = open_on_stop(joint), plain = contact_at(joint, 180.0);
    CHECK_THAT(open.stop.force_n * open.stop.lever_mm, WithinRel(-open.torque_nmm, 1e-9));
    CHECK(open.force_n < plain.force_n);
    const Contact nudged = contact_on_stop(joint, 180.0, open.stop.force_n + 1e-3);
    // Castigliano: at an angle that stays, the work of a little more force is what the end yields.
    const double work = nudged.energy_nmm - open.energy_nmm;
    const double way = end_gives_way_mm(joint, nudged) - end_gives_way_mm(joint, open);
    CHECK_THAT(work, WithinRel(open.stop.force_n * way, 1e-4));
}

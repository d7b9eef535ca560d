#include <algorithm>
#include <cmath>
#include <vector>

#include "backspring/action/friction_couple.hpp"
#include "backspring/action/rest.hpp"
#include "backspring/check/columns.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/design/joint_of.hpp"
#include "catch.hpp"
#include "several_blades.hpp"

using namespace backspring;

namespace {

/// Two alike, each with a kick on which it lies closed.
Design twins_on_kicks() {
    Design design = designs::whinchat();
    for (Blade& blade : design.blades) {
        blade.tang = design.own().tang;
        blade.tang.kick = Kick{.distance_mm = 4.0, .height_mm = 0.3, .radius_mm = 0.5};
    }
    design.blades[1].name = "sheep";
    return design;
}

/// Two alike that lie closed on their flats, the second one closed.
Design twins_on_flats() {
    Design design = designs::whinchat();
    const std::string name = design.blades[1].name;
    design.blades[1] = design.own();
    design.blades[1].name = name;
    design.blades[1].stands = Stand::closed;
    return design;
}

struct Pair {
    double first_n, second_n, energy_nmm, first_nmm, second_nmm;
};

Pair pair_at(const Design& design, double first_deg, double second_deg) {
    const auto found = contacts_at(design, {first_deg, second_deg});
    const Contact &a = found[0].contact, &b = found[1].contact;
    return {a.force_n, b.force_n, a.energy_nmm, a.torque_nmm, b.torque_nmm};
}

constexpr double kAngleDeg = 2.0;

}  // namespace

TEST_CASE("two blades that stand alike bear alike", "[blades]") {
    const Pair pair = pair_at(twins_on_kicks(), kAngleDeg, kAngleDeg);
    CHECK(pair.first_n > 1.0);
    // What a force of 50 N lacks of 1e-6 mm is found to the rounding of heights, 1e-15 mm.
    CHECK_THAT(pair.first_n, WithinRel(pair.second_n, 1e-8));
}

TEST_CASE("a blade hands its force to one beside it little by little", "[blades][property]") {
    const Design design = twins_on_kicks();
    constexpr int steps = 200;
    constexpr double span_deg = 2e-4;
    const Pair alone = pair_at(design, kAngleDeg, kAngleDeg + 0.1);
    double last = 0.0, longest = 0.0;
    for (int i = 0; i <= steps; ++i) {
        const double by = span_deg * (2.0 * i / steps - 1.0);
        const Pair pair = pair_at(design, kAngleDeg, kAngleDeg + by);
        CAPTURE(by, pair.first_n, pair.second_n);
        if (i > 0) longest = std::max(longest, std::abs(pair.second_n - last));
        last = pair.second_n;
        CHECK_THAT(pair.first_n + pair.second_n, WithinRel(alone.first_n, 1e-4));
    }
    CHECK(longest < 0.1 * alone.first_n);
}

TEST_CASE("force that two blades share goes with their energy", "[blades][property]") {
    const Design design = twins_on_kicks();
    constexpr double h_deg = 1e-6;
    const double h = radians(h_deg);
    for (const double by : {-1e-5, 0.0, 1e-5}) {
        const double other = kAngleDeg + by;
        const Pair mid = pair_at(design, kAngleDeg, other);
        const Pair up = pair_at(design, kAngleDeg + h_deg, other);
        const Pair down = pair_at(design, kAngleDeg - h_deg, other);
        const Pair right = pair_at(design, kAngleDeg, other + h_deg);
        const Pair left = pair_at(design, kAngleDeg, other - h_deg);
        CAPTURE(by, mid.first_n, mid.second_n);
        // Simpson's rule for the torque over two steps; energies of 100 N mm to 1e-13.
        const double work = (down.first_nmm + 4.0 * mid.first_nmm + up.first_nmm) * h / 3.0;
        CHECK_THAT(up.energy_nmm - down.energy_nmm,
                   WithinAbs(work, 1e-4 * std::abs(work) + 1e-12 * mid.energy_nmm));
        // What a turn of one does to the other's torque is alike both ways.
        const double to_second = up.second_nmm - down.second_nmm;
        const double to_first = right.first_nmm - left.first_nmm;
        CHECK_THAT(to_second, WithinAbs(to_first, 1e-4 * std::abs(to_first)));
    }
}

// Either of two flats may bear ahead of the other: what stores more is what bears.
TEST_CASE("a blade turned past one whose flat lies alike is driven back to it from both sides",
          "[blades][property]") {
    const Design design = twins_on_flats();
    const double first_deg = GENERATE(0.96, 0.98, 1.0);
    const double beside_deg = GENERATE(1e-6, 1e-5, 1e-4);
    CAPTURE(first_deg, beside_deg);
    CHECK(pair_at(design, first_deg, first_deg - beside_deg).second_nmm < 0.0);
    CHECK(pair_at(design, first_deg, first_deg + beside_deg).second_nmm > 0.0);
}

TEST_CASE("of two blades alike the one that is turned goes on smoothly while the other one seats",
          "[blades][property]") {
    const Joint joint = make_joint(twins_on_flats());
    const auto torque = [&](double angle) { return contact_at(joint, angle).torque_nmm; };
    constexpr double step_deg = 0.005;
    for (double angle = 0.95; angle < 0.99; angle += step_deg) {
        const double before = torque(angle - step_deg), here = torque(angle);
        CAPTURE(angle, before, here);
        // A smooth torque bends by the square of so short a step.
        CHECK_THAT(torque(angle + step_deg) - here, WithinRel(here - before, 0.02));
    }
}

TEST_CASE("two blades alike rest closed where one alone does", "[blades]") {
    const Design design = twins_on_flats();
    const Joint both = make_joint(design), one = make_joint_alone(design);
    const auto beside = rest_near(both, 0.0, kClosedReachDeg);
    const auto alone = rest_near(one, 0.0, kClosedReachDeg);
    REQUIRE(beside);
    REQUIRE(alone);
    REQUIRE(beside->others.beside.size() == 1);
    // Two forces on the flats tell part of the pressure's spread, which one force leaves out and
    // which is under 0.02 % of a force: together they press by so much more.
    const double force = beside->force_n + beside->others.beside[0].force_n;
    const double more = force / alone->force_n - 1.0;
    CHECK(more > 0.0);
    CHECK(more < 2e-4);
    // The face is bent by as much more, but for the places, which are others; the blade turns by
    // what is left of that beyond the free face's slope.
    const auto bent = [](const Joint& joint, const Contact& rest) {
        return std::tan(radians(rest.blade_angle_deg)) - joint.face_slope;
    };
    CHECK_THAT(bent(both, *beside) / bent(one, *alone) - 1.0, WithinRel(more, 0.05));
}

TEST_CASE("who turns one of two blades alike feels what both of them store", "[blades][property]") {
    const Joint joint = make_joint(twins_on_flats());
    const auto at = [&](double angle) { return contact_at(joint, angle); };
    const double angle = GENERATE(0.95, 0.96, 0.98, 0.99);
    constexpr double h_deg = 1e-3;
    const Contact here = at(angle);
    CAPTURE(angle);
    CHECK_THAT(here.others.angles_deg[0], WithinAbs(angle, 1e-12));
    const auto rise = [&](double by) {
        return at(angle + by).energy_nmm - at(angle - by).energy_nmm;
    };
    const double rate = (8.0 * rise(h_deg) - rise(2.0 * h_deg)) / (12.0 * radians(h_deg));
    // Rounding of an energy of 60 N mm over that step, and its fourth power.
    CHECK_THAT(here.torque_nmm, WithinRel(rate, 1e-6));
    const auto blades = blades_of(joint, here);
    CHECK_THAT(here.torque_nmm, WithinRel(blades[0].torque_nmm + blades[1].torque_nmm, 1e-9));
}

TEST_CASE("what two flats alike store goes on where they run along each other",
          "[blades][property]") {
    const Design design = twins_on_flats();
    const double angle = GENERATE(0.95, 0.97, 1.0);
    const double along = pair_at(design, angle, angle).energy_nmm;
    for (const double beside_deg : {-1e-7, -1e-9, 1e-10, 1e-8}) {
        CAPTURE(angle, beside_deg);
        CHECK_THAT(pair_at(design, angle, angle + beside_deg).energy_nmm, WithinRel(along, 2e-8));
    }
}

TEST_CASE("a blade that is taken along rubs as well", "[blades][friction][property]") {
    const Joint joint = make_joint(twins_on_flats());
    const Contact here = contact_at(joint, 0.96);
    const Friction friction{.spring = 0.12, .pivot = 0.2, .pivot_pin_mm = 3.0};
    REQUIRE(here.others.taken_along == 1);
    double each = 0.0;
    for (const Contact& blade : blades_of(joint, here)) {
        REQUIRE(blade.force_n > 0.0);
        each += friction_torque_nmm(blade, friction, joint.pivot_mm);
    }
    CHECK_THAT(friction_torque_nmm(here, friction, joint.pivot_mm), WithinRel(each, 1e-12));
}

TEST_CASE("what slides next to without friction bears as what stands still, another taken along",
          "[blades][friction][property]") {
    const Design design = twins_on_flats();
    const Joint joint = make_joint(design);
    const Contact here = contact_at(joint, 0.96);
    constexpr Friction slight{.spring = 1e-9};
    const Contact sliding = sliding_contact(design.spring, joint, here, slight, true);
    CHECK_THAT(sliding.torque_nmm, WithinRel(here.torque_nmm, 1e-6));
    CHECK_THAT(sliding.force_n, WithinRel(here.force_n, 1e-6));
    const FrictionCouple couple =
        friction_couple(design.spring, joint, here, Friction{.spring = 0.12});
    CHECK(couple.opening_nmm * couple.closing_nmm < 0.0);
}

#include <cmath>
#include <numbers>

#include "backspring/action/reading.hpp"
#include "backspring/action/stroke.hpp"
#include "backspring/core/angle.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

Joint plover() {
    const Design design = designs::plover();
    return make_joint(design.spring, design.own().pad, design.own().tang, design.own().fit);
}

/// Closes in on the angle between two where the number of touches changes.
double change_of_count(const Joint& joint, double one_deg, double other_deg) {
    const int count = contact_at(joint, one_deg).count;
    while (std::abs(other_deg - one_deg) > 1e-12) {
        const double middle = 0.5 * (one_deg + other_deg);
        (contact_at(joint, middle).count == count ? one_deg : other_deg) = middle;
    }
    return 0.5 * (one_deg + other_deg);
}

}  // namespace

TEST_CASE("closed, a kick and the heel of the tang bear together", "[action][property]") {
    const Joint joint = plover();
    bool both = false;
    for (double angle = -6.0; angle <= 6.0; angle += 0.05) {
        const Contact contact = contact_at(joint, angle);
        if (contact.count < 2) continue;
        both = true;
        CAPTURE(angle);
        CHECK(contact.touches[0].x_mm < contact.touches[1].x_mm);
        for (const Touch& touch : contact.all()) {
            CHECK(touch.force_n > 0.0);
            const double face = joint.face_mm + joint.face_slope * touch.x_mm +
                                deflection_mm(joint, contact, touch.x_mm);
            CHECK_THAT(touch.height_mm, WithinAbs(face, 1e-11));
        }
    }
    CHECK(both);
}

TEST_CASE("with two touches each outline is tangent to the spring", "[action][property]") {
    const Joint joint = plover();
    int seen = 0;
    for (double angle = -6.0; angle <= 6.0; angle += 0.05) {
        const Contact contact = contact_at(joint, angle);
        if (contact.count < 2) continue;
        for (const Touch& touch : contact.all()) {
            if (touch.x_mm == joint.pad.start_mm || touch.x_mm == joint.pad.end_mm) continue;
            double slope = joint.face_slope;
            for (const Touch& other : contact.all()) {
                slope += other.force_n * slope_per_force(joint.flexibility, touch.x_mm, other.x_mm);
            }
            CAPTURE(angle, touch.x_mm);
            CHECK_THAT(touch.slope, WithinAbs(slope, 1e-10));
            ++seen;
        }
    }
    CHECK(seen > 10);
}

TEST_CASE("the nose of the kick bears on its own arc", "[action][closed form]") {
    const Joint joint = plover();
    const Contact contact = contact_at(joint, 0.0);
    REQUIRE(contact.count > 0);
    const Arc& kick = *joint.outline.kick;
    // Closed, the outline is turned half round.
    const double away = std::hypot(contact.touches[0].x_mm - (joint.pivot_mm - kick.u_mm),
                                   contact.touches[0].height_mm + kick.w_mm);
    CHECK_THAT(away, WithinRel(kick.radius_mm, 1e-11));
}

TEST_CASE("force and energy run on smoothly from one touch to two", "[action][property]") {
    const Joint joint = plover();
    int changes = 0;
    for (double angle = -6.0; angle < 8.0; angle += 0.05) {
        const Contact before = contact_at(joint, angle), after = contact_at(joint, angle + 0.05);
        if (before.count == after.count) continue;
        ++changes;
        const double at = change_of_count(joint, angle, angle + 0.05);
        const Contact a = contact_at(joint, at - 1e-9), b = contact_at(joint, at + 1e-9);
        CAPTURE(at);
        CHECK(a.count != b.count);
        // 2e-9 deg apart: rates of a few hundred newtons a degree leave 1e-8 of the force.
        CHECK_THAT(a.force_n, WithinRel(b.force_n, 1e-7));
        CHECK_THAT(a.energy_nmm, WithinRel(b.energy_nmm, 1e-9));
    }
    CHECK(changes >= 1);
}

TEST_CASE("a kick that stays clear changes nothing", "[action][property]") {
    const Design design = designs::plover();
    Design plain = design;
    plain.own().tang.kick.reset();
    const Joint with = plover(), without = make_joint(plain.spring, plain.own().pad,
                                                      plain.own().tang, plain.own().fit);
    for (double angle = 40.0; angle <= 180.0; angle += 7.0) {
        CHECK(contact_at(with, angle).force_n == contact_at(without, angle).force_n);
        CHECK(contact_at(with, angle).torque_nmm == contact_at(without, angle).torque_nmm);
    }
}

TEST_CASE("a kick of vanishing height leaves the rest of the travel alone",
          "[action][convergence]") {
    Design design = designs::plover();
    design.own().tang.kick.reset();
    const double plain =
        contact_at(make_joint(design.spring, design.own().pad, design.own().tang, design.own().fit),
                   3.0)
            .energy_nmm;
    design.own().tang.kick = Kick{.distance_mm = 8.0, .height_mm = 1e-9, .radius_mm = 0.5};
    const double kicked =
        contact_at(make_joint(design.spring, design.own().pad, design.own().tang, design.own().fit),
                   3.0)
            .energy_nmm;
    CHECK_THAT(kicked, WithinRel(plain, 1e-8));
}

TEST_CASE("with the rear pin out kick and heel hold the rigid spring at one height",
          "[action][property]") {
    Design design = designs::heron();
    design.own().pad = {34.5, 51.5};
    design.own().tang = {.pivot_mm = 47.0,
                         .open_mm = 5.5,
                         .half_stop_mm = 5.58,
                         .closed_mm = 5.5,
                         .corner_open_mm = 0.9,
                         .corner_closed_mm = 0.8,
                         .front_mm = 6.0,
                         .round_end_mm = {},
                         .kick = {}};
    design.own().fit = {.preload_mm = 1.0, .dial_mm = 47.0};
    const Joint body = make_unloaded_joint(design.own().pad, design.own().tang, design.own().fit);
    for (double distance = 5.0; distance < 11.0; distance += 0.1) {
        design.own().tang.kick = Kick{.distance_mm = distance, .height_mm = 0.3, .radius_mm = 0.6};
        const Joint joint =
            make_unloaded_joint(design.own().pad, design.own().tang, design.own().fit);
        const auto rest = find_rests(joint, false).closed;
        REQUIRE(rest.has_value());
        CAPTURE(distance, rest->blade_angle_deg);
        // The blade has turned until the heel, too, is as high as the nose holds the spring.
        const Contact heel = contact_at(body, rest->blade_angle_deg);
        CHECK_THAT(deflection_mm(joint, *rest, joint.dial_mm),
                   WithinAbs(deflection_mm(body, heel, joint.dial_mm), 1e-10));
    }
}

TEST_CASE("a kick beside the pad's end holds no spring it cannot reach", "[action][property]") {
    Design design = designs::heron();
    design.own().tang.closed_mm = 4.67;
    design.own().tang.kick = Kick{.distance_mm = 5.0, .height_mm = 0.94, .radius_mm = 0.35};
    const Joint joint =
        make_joint(design.spring, design.own().pad, design.own().tang, design.own().fit);
    const auto rest = find_rests(joint, true).closed;
    REQUIRE(rest.has_value());
    // The nose has slipped off the pad and leans on its end: a hair farther closed it would have to
    // lift the spring by 0.6 mm. What bears is the heel, ahead of the pivot.
    const Contact lifted = contact_at(joint, rest->blade_angle_deg - 1e-9);
    CHECK(lifted.energy_nmm > 1.4 * rest->energy_nmm);
    CHECK(rest->touches[0].x_mm > joint.pivot_mm);
    CHECK(rest->torque_nmm > 0.0);
    const Contact opened = contact_at(joint, rest->blade_angle_deg + 1e-6);
    CHECK_THAT(opened.force_n, WithinRel(rest->force_n, 1e-6));
    CHECK_THAT(opened.torque_nmm, WithinRel(rest->torque_nmm, 1e-6));
}

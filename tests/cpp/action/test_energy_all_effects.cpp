#include <algorithm>
#include <cmath>

#include "backspring/action/end_stop.hpp"
#include "backspring/check/check.hpp"
#include "backspring/check/solution.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/design/joint_of.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

/// Everything stated that a drawing commonly leaves out.
Design all_stated(Design design) {
    design.spring.mid_line = {{-38.0, 0.0}, {-34.0, 0.2}, {-10.0, 1.4}, {10.0, 1.1}, {27.0, 0.0}};
    design.spring.widths = {{-38.0, 2.4}, {-5.0, 2.3}, {27.0, 2.2}, {36.5, 2.25}};
    design.spring.pin_clearance = {.middle_mm = 0.02, .rear_mm = 0.03};
    design.own().tang.pivot_clearance_mm = 0.02;
    design.own().fit.stop = {.place = StopPlace::middle, .face_mm = 4.52};
    design.friction.bends = true;
    design.frame.liner_metal = LinerMetal::brass;
    design.frame.liner_thickness_mm = 1.0;
    design.frame.liner_height_mm = 12.0;
    design.frame.scale_thickness_mm = 2.0;
    design.frame.scale_modulus_mpa = 12000.0;
    design.surface.residual_mpa = -300.0;
    design.surface.hole_residual_mpa = -200.0;
    design.surface.soft_skin_mm = 0.05;
    return design;
}

/// Difference of fourth order, per radian.
template <class Energy>
double rate_nmm(Energy energy, double h_deg) {
    return (8.0 * (energy(h_deg) - energy(-h_deg)) - energy(2.0 * h_deg) + energy(-2.0 * h_deg)) /
           (12.0 * radians(h_deg));
}

/// The blade at an angle with its stop's face as deep in the end as that gives way.
Contact stopped_at(const Joint& joint, double angle_deg) {
    double low = 0.0, high = 400.0;
    for (int i = 0; i < 100; ++i) {
        const double force = 0.5 * (low + high);
        const Contact contact = contact_on_stop(joint, angle_deg, force);
        const bool deep = stop_overlap_mm(joint, angle_deg) > end_gives_way_mm(joint, contact);
        (deep ? low : high) = force;
    }
    return contact_on_stop(joint, angle_deg, 0.5 * (low + high));
}

}  // namespace

// Friction takes energy out and has no place in this: its drag is worked out on top of the contact.
TEST_CASE("torque is the rate of energy with all effects stated", "[action][property]") {
    for (const Design& design : {all_stated(designs::heron()), all_stated(designs::plover())}) {
        const Joint joint = make_joint(design);
        double peak = 0.0, worst = 0.0;
        for (double deg = 3.3; deg < 176.0; deg += 2.7) {
            const auto energy = [&](double by) { return contact_at(joint, deg + by).energy_nmm; };
            const double torque = contact_at(joint, deg).torque_nmm;
            peak = std::max(peak, std::abs(torque));
            worst = std::max(worst, std::abs(torque - rate_nmm(energy, 2e-3)));
        }
        CAPTURE(worst, peak);
        CHECK(worst < 1e-6 * peak);
    }
}

TEST_CASE("torque of contact and stop is the rate of energy with all effects stated",
          "[action][stop][property]") {
    const Joint joint = make_joint(all_stated(designs::heron()));
    const Contact open = open_on_stop(joint);
    CHECK(open.stop.force_n > 1.0);
    CHECK_THAT(open.stop.force_n * open.stop.lever_mm, WithinRel(-open.torque_nmm, 1e-9));
    for (const double beyond : {-0.004, 0.0, 0.006}) {
        const double angle = open.blade_angle_deg + beyond;
        const auto energy = [&](double by) { return stopped_at(joint, angle + by).energy_nmm; };
        const Contact contact = stopped_at(joint, angle);
        const double torque = contact.torque_nmm + contact.stop.force_n * contact.stop.lever_mm;
        CHECK_THAT(torque, WithinAbs(rate_nmm(energy, 2e-4), 1e-6 * std::abs(contact.torque_nmm)));
    }
}

TEST_CASE("a joint with all effects stated is checked whole", "[action][stop][property]") {
    const Check plain = check(designs::heron()), stated = check(all_stated(designs::heron()));
    CHECK(stated.impossible.empty());
    REQUIRE(stated.strokes.size() == plain.strokes.size());
    // Liners, clearances and relieved sides take a few percent each.
    const Design drawn = designs::heron(), whole = all_stated(drawn);
    Solution before(drawn), after(whole);
    const double share = *peak_torque_nmm(after) / *peak_torque_nmm(before);
    CHECK(share < 0.97);
    CHECK(share > 0.8);
}

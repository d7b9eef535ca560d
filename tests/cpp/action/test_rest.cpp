#include <cmath>
#include <vector>

#include "backspring/action/rest.hpp"
#include "backspring/core/angle.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

std::vector<Contact> free_rests(const Joint& joint, bool half_stop) {
    const Rests rests = find_rests(joint, half_stop);
    std::vector<Contact> found;
    if (rests.closed) found.push_back(*rests.closed);
    if (rests.half_stop) found.push_back(*rests.half_stop);
    return found;
}

}  // namespace

TEST_CASE("where a blade rests the resultant passes through the pivot", "[action][property]") {
    for (const auto& [name, design] : designs::all()) {
        const Joint joint = designs::joint_of(design);
        const auto rests = free_rests(joint, design.own().tang.half_stop_mm.has_value());
        CHECK(rests.size() == (design.own().tang.half_stop_mm ? 2u : 1u));
        for (const Contact& rest : rests) {
            CAPTURE(name, rest.blade_angle_deg);
            double moment = 0.0;
            for (const Touch& touch : rest.all()) {
                moment +=
                    touch.force_n * (touch.x_mm - joint.pivot_mm + touch.slope * touch.height_mm);
            }
            // The angle is found to rounding; on a flat torque changes by kilonewton
            // millimetres a radian.
            CHECK(std::abs(moment) < 1e-8 * rest.force_n);
        }
    }
}

TEST_CASE("a rest is a local minimum of strain energy", "[action][property]") {
    for (const auto& [name, design] : designs::all()) {
        const Joint joint = designs::joint_of(design);
        for (const Contact& rest : free_rests(joint, design.own().tang.half_stop_mm.has_value())) {
            for (const double away : {-0.5, -0.05, -0.005, 0.005, 0.05, 0.5}) {
                CAPTURE(name, rest.blade_angle_deg, away);
                CHECK(contact_at(joint, rest.blade_angle_deg + away).energy_nmm > rest.energy_nmm);
            }
        }
    }
}

TEST_CASE("open is where the blade's stop is", "[action][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Rests rests = find_rests(designs::joint_of(design), false);
        CHECK(rests.open.blade_angle_deg == 180.0);
        CHECK(rests.open.torque_nmm < 0.0);  // the spring holds the blade against its stop
        CHECK_FALSE(rests.half_stop);
    }
}

TEST_CASE("a round end holds the blade nowhere on its arc", "[action][property]") {
    // A round end is level all round 90 degrees: nothing pulls the blade either way.
    const Joint joint = designs::joint_of(designs::wren());
    const double peak = std::abs(contact_at(joint, 165.0).torque_nmm);
    for (double angle = 80.0; angle <= 100.0; angle += 2.0) {
        CAPTURE(angle);
        CHECK(std::abs(contact_at(joint, angle).torque_nmm) < 1e-9 * peak);
    }
}

TEST_CASE("on a round end a blade stays where it is put", "[action][property]") {
    // What is left of its torque there is rounding, of either sign.
    const Joint joint = designs::joint_of(designs::wren());
    for (double angle = 80.0; angle <= 100.0; angle += 0.5) {
        CAPTURE(angle);
        const auto rest = rest_near(joint, angle, 30.0);
        REQUIRE(rest);
        CHECK(rest->blade_angle_deg == angle);
    }
}

TEST_CASE("no rest is invented within reach of a slope", "[action][property]") {
    CHECK_FALSE(rest_near(designs::joint_of(designs::heron()), 40.0, 10.0));
    CHECK(rest_near(designs::joint_of(designs::heron()), 40.0, 60.0));
}

TEST_CASE("a blade the spring has let go of stays where it is", "[action][property]") {
    Design design = designs::heron();
    design.own().fit.preload_mm = 0.05;
    design.own().tang.closed_mm = 4.3;
    const auto rest = rest_near(designs::joint_of(design), 0.0, 30.0);
    REQUIRE(rest);
    CHECK(rest->count == 0);
    CHECK(rest->blade_angle_deg == 0.0);
}

TEST_CASE("pushed out of a loose place, a blade stops where the spring lets go",
          "[action][property]") {
    Design design = designs::heron();
    design.own().fit.preload_mm = 0.05;
    design.own().tang.closed_mm = 4.3;
    const auto rest = rest_near(designs::joint_of(design), 12.0, 30.0);
    REQUIRE(rest);
    CHECK(rest->count == 0);
    CHECK(contact_at(designs::joint_of(design), rest->blade_angle_deg + 1e-6).count == 1);
}

TEST_CASE("on a face the blade rests with its contact at the foot of the perpendicular",
          "[action][closed form]") {
    // A force square to a flat passes through the pivot only there.
    const Rests rests = find_rests(designs::joint_of(designs::heron()), true);
    REQUIRE(rests.closed);
    REQUIRE(rests.half_stop);
    const auto foot = [](double face, double turn_deg) {
        return 32.0 - face * std::sin(radians(turn_deg));
    };
    CHECK_THAT(rests.closed->touches[0].x_mm,
               WithinAbs(foot(4.6, rests.closed->blade_angle_deg), 1e-9));
    CHECK_THAT(rests.half_stop->touches[0].x_mm,
               WithinAbs(foot(4.62, rests.half_stop->blade_angle_deg - 90.0), 1e-9));
}

TEST_CASE("the worked example rests where a slow solution rests", "[action][oracle]") {
    // Stated errors of that solution: angles 0.01 deg, forces 0.1 %, place to its last digit.
    const Rests rests = find_rests(designs::joint_of(designs::heron()), true);
    REQUIRE(rests.closed);
    REQUIRE(rests.half_stop);
    CHECK_THAT(rests.half_stop->blade_angle_deg, WithinAbs(91.022, 0.01));
    CHECK_THAT(rests.half_stop->force_n, WithinRel(66.52, 1e-3));
    CHECK_THAT(rests.closed->blade_angle_deg, WithinAbs(0.970, 0.01));
    CHECK_THAT(rests.closed->force_n, WithinRel(65.20, 1e-3));
    CHECK_THAT(rests.closed->touches[0].x_mm - 32.0, WithinAbs(-0.08, 0.006));
    CHECK_THAT(rests.half_stop->touches[0].x_mm - 32.0, WithinAbs(-0.08, 0.006));
    CHECK_THAT(rests.open.force_n, WithinRel(74.42, 1e-3));
    CHECK_THAT(rests.open.touches[0].x_mm - 32.0, WithinAbs(-3.93, 0.006));
    CHECK_THAT(rests.open.energy_nmm, WithinRel(29.368, 1e-3));
}

#include <cmath>
#include <functional>
#include <string>

#include "backspring/design/joint_of.hpp"
#include "catch.hpp"
#include "several_blades.hpp"
#include "told.hpp"

using namespace backspring;

TEST_CASE("numbers of a frame that mean nothing alone are told", "[design][frame][abuse]") {
    struct Row {
        const char* told;
        std::function<void(Frame&)> breaks;
    };
    const Row rows[] = {
        {"frame.liner_height: must be given with the thickness of the liners\n",
         [](Frame& f) { f.liner_thickness_mm = 1.0; }},
        {"frame.liner_thickness: must be given with the height of the liners\n",
         [](Frame& f) { f.liner_height_mm = 16.0; }},
        {"frame.liner_thickness: must be given with the modulus of the liners\n",
         [](Frame& f) { f.liner_modulus_mpa = 1e5; }},
        {"frame.scale_modulus: must be given with the thickness of the scales\n",
         [](Frame& f) {
             f.liner_thickness_mm = 1.0, f.liner_height_mm = 16.0, f.scale_thickness_mm = 4.0;
         }},
        {"frame.scale_thickness: must be given with the modulus of the scales\n",
         [](Frame& f) {
             f.liner_thickness_mm = 1.0, f.liner_height_mm = 16.0, f.scale_modulus_mpa = 1e4;
         }},
        {"frame.liner_thickness: must be given with scales, for the pins sit in the liners\n",
         [](Frame& f) { f.scale_thickness_mm = 4.0, f.scale_modulus_mpa = 1e4; }},
        {"frame.seat: give either a measured seat or liners with their height, not both\n",
         [](Frame& f) {
             f.seat_mm_per_n = 1e-4, f.liner_thickness_mm = 1.0, f.liner_height_mm = 16.0;
         }},
    };
    for (const Row& row : rows) {
        CAPTURE(row.told);
        Design design = designs::heron();
        row.breaks(design.frame);
        CHECK(told(design) == row.told);
    }
}

TEST_CASE("liners hold all pins, a hair more than their depth", "[design][frame][abuse]") {
    Design design = designs::heron();
    design.frame.liner_thickness_mm = 1.0;
    const double least = least_liner_height_mm(design);
    design.frame.liner_height_mm = least + 1e-9;
    CHECK(told(design).empty());
    design.frame.liner_height_mm = least;
    CHECK_THAT(told(design), ContainsSubstring("frame.liner_height: must be more than"));
    // What is broken elsewhere is told by itself: no depth follows from what is none.
    const double nan = std::nan("");
    const std::function<void(Design&)> breaks[] = {
        [&](Design& d) { d.own().tang.pivot_mm = nan; },
        [&](Design& d) { d.spring.thickness[1].thickness_mm = nan; },
        [&](Design& d) { d.pins.middle_mm = nan; },
        [&](Design& d) { d.friction.pivot_pin_mm = nan; },
        [&](Design& d) { d.frame.liner_thickness_mm = nan; }};
    for (const auto& each : breaks) {
        Design broken = design;
        each(broken);
        CHECK_FALSE(told(broken).empty());
        CHECK(told(broken).find("hold all pins") == std::string::npos);
    }
}

TEST_CASE("liners of a spring that a middle pin alone holds need no depth", "[design][frame]") {
    Design design = designs::dunlin();
    design.frame.liner_thickness_mm = 1.0;
    design.frame.liner_height_mm = 0.1;
    CHECK(told(design).find("hold all pins") == std::string::npos);
}

TEST_CASE("one measured seat does not do for a blade at each end", "[design][frame][abuse]") {
    Design design = designs::bunting(SupportKind::two_pins);
    design.frame.seat_mm_per_n = 1e-4;
    CHECK_THAT(told(design), ContainsSubstring("frame.seat: one number does not say"));
}

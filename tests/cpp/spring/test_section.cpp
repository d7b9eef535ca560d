#include <algorithm>

#include "backspring/spring/section.hpp"
#include "catch.hpp"

using backspring::make_section;
using backspring::outer_stress_per_moment;
using backspring::Section;

namespace {

/// The two rectangles left above and below the slot, each about the common centroid.
Section two_rectangles(double b, double t, double c, double e) {
    const double above = 0.5 * t - (e + 0.5 * c), below = 0.5 * t + (e - 0.5 * c);
    const double mid_above = 0.5 * t - 0.5 * above, mid_below = -0.5 * t + 0.5 * below;
    const double area = b * (above + below);
    const double centroid = b * (above * mid_above + below * mid_below) / area;
    const auto about = [&](double h, double mid) {
        return b * h * h * h / 12.0 + b * h * (mid - centroid) * (mid - centroid);
    };
    return {.area_mm2 = area,
            .inertia_mm4 = about(above, mid_above) + about(below, mid_below),
            .back_mm = 0.5 * t - centroid,
            .belly_mm = 0.5 * t + centroid};
}

}  // namespace

TEST_CASE("a whole section is b t and b t^3 / 12", "[spring][closed form]") {
    const Section section = make_section(2.5, 3.0);
    CHECK(section.area_mm2 == 7.5);
    CHECK_THAT(section.inertia_mm4, WithinRel(5.625, kRounding));
    CHECK(section.back_mm == 1.5);
    CHECK(section.belly_mm == 1.5);
    CHECK_THAT(outer_stress_per_moment(section), WithinRel(6.0 / (2.5 * 9.0), kRounding));
}

TEST_CASE("a slotted section is its two rectangles", "[spring][closed form]") {
    const double chord = GENERATE(0.1, 1.0, 2.0, 2.7);
    const double offset = GENERATE(-0.14, 0.0, 0.1);
    CAPTURE(chord, offset);
    const Section net = make_section(2.3, 3.0, chord, offset);
    const Section expected = two_rectangles(2.3, 3.0, chord, offset);
    // Ten times rounding: the slot is subtracted from the whole.
    CHECK_THAT(net.area_mm2, WithinRel(expected.area_mm2, 10.0 * kRounding));
    CHECK_THAT(net.inertia_mm4, WithinRel(expected.inertia_mm4, 10.0 * kRounding));
    CHECK_THAT(net.back_mm, WithinRel(expected.back_mm, 10.0 * kRounding));
    CHECK_THAT(net.belly_mm, WithinRel(expected.belly_mm, 10.0 * kRounding));
}

TEST_CASE("turning the offset over swaps back and belly", "[spring][property]") {
    const Section up = make_section(2.3, 3.0, 1.5, 0.4);
    const Section down = make_section(2.3, 3.0, 1.5, -0.4);
    CHECK(up.back_mm == down.belly_mm);
    CHECK(up.belly_mm == down.back_mm);
    CHECK(up.inertia_mm4 == down.inertia_mm4);
    CHECK(up.back_mm > up.belly_mm);  // steel is missing on the back, the centroid sinks
}

TEST_CASE("the farther fibre carries the higher stress", "[spring][property]") {
    const Section section = make_section(2.3, 3.0, 1.5, 0.4);
    CHECK(outer_stress_per_moment(section) ==
          std::max(section.back_mm, section.belly_mm) / section.inertia_mm4);
}

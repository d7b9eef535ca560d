#include <cmath>

#include "backspring/tang/tang.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("a square tang reaches back to its half-stop face", "[tang][closed form]") {
    CHECK(rear_reach_mm(designs::heron().own().tang) == 4.62);
}

TEST_CASE("a round end touches the corners of a square one from outside", "[tang][closed form]") {
    Tang tang = designs::wren().own().tang;
    tang.open_mm = tang.closed_mm = 4.5;
    tang.corner_open_mm = tang.corner_closed_mm = 1.5;
    // Corner centres 3 mm back and 3 mm up.
    CHECK_THAT(round_end_radius_mm(tang), WithinRel(3.0 * std::sqrt(2.0) + 1.5, 1e-14));
    CHECK(rear_reach_mm(tang) == round_end_radius_mm(tang));
}

TEST_CASE("the square end between unlike faces lies at their mean", "[tang][closed form]") {
    Tang tang = designs::wren().own().tang;
    tang.open_mm = 4.0;
    tang.closed_mm = 5.0;
    tang.corner_open_mm = tang.corner_closed_mm = 1.0;
    // The farther corner's centre is 3.5 mm back and 4 mm down.
    CHECK_THAT(round_end_radius_mm(tang), WithinRel(std::hypot(3.5, 4.0) + 1.0, 1e-14));
}

TEST_CASE("the farther corner sets a round end", "[tang][property]") {
    Tang tang = designs::wren().own().tang;
    const double both = round_end_radius_mm(tang);
    tang.corner_open_mm = 0.5;
    CHECK(round_end_radius_mm(tang) > both);
}

TEST_CASE("a round end is taken as given", "[tang][property]") {
    Tang tang = designs::wren().own().tang;
    tang.round_end_mm = 5.25;
    CHECK(round_end_radius_mm(tang) == 5.25);
    CHECK(rear_reach_mm(tang) == 5.25);
}

#include "backspring/spring/hole.hpp"
#include "catch.hpp"

using backspring::chord_mm;
using backspring::Hole;

TEST_CASE("a hole's chord is that of its circle", "[spring][closed form]") {
    const Hole hole{.center_mm = 3.0, .diameter_mm = 10.0, .offset_mm = 0.7};
    CHECK(chord_mm(hole, 3.0) == 10.0);
    CHECK(chord_mm(hole, 6.0) == 8.0);   // 3-4-5 triangle
    CHECK(chord_mm(hole, -1.0) == 6.0);  // 3-4-5 triangle
}

TEST_CASE("a hole takes nothing outside itself", "[spring][property]") {
    const Hole hole{.center_mm = 3.0, .diameter_mm = 2.0, .offset_mm = 0.0};
    CHECK(chord_mm(hole, 4.0) == 0.0);
    CHECK(chord_mm(hole, 1.0) == 0.0);
    CHECK(chord_mm({.center_mm = 3.0, .diameter_mm = 0.0, .offset_mm = 0.0}, 3.0) == 0.0);
}

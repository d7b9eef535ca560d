#include <limits>

#include "backspring/core/error.hpp"
#include "backspring/strength/hole_edge.hpp"
#include "catch.hpp"

using namespace backspring;

TEST_CASE("a hole on the mid-line carries twice its nominal edge stress",
          "[strength][closed form]") {
    for (const double diameter : {0.05, 1.0, 2.0, 2.85}) {
        const LocalStress edge = hole_edge_stress(3.8, 2.3, {5.0, diameter, 0.0}, 3200.0);
        CAPTURE(diameter);
        CHECK(edge.nominal_mpa > 0.0);
        CHECK_THAT(edge.factor, WithinRel(2.0, 1e-14));
        CHECK_THAT(edge.local_mpa, WithinRel(edge.factor * edge.nominal_mpa, 1e-14));
        CHECK(edge.station_mm == 5.0);
    }
}

TEST_CASE("a small hole off the mid-line reaches 3 s0 + 2 k a", "[strength][closed form]") {
    // Airy's stress function for a field s0 + k y: derived. The hole is small: 1e-4 of the depth.
    const double width = 2.0, thickness = 4.0, moment = 1000.0, radius = 2e-4, offset = 0.7;
    const double slope = -12.0 * moment / (width * 64.0);
    const double expected = 3.0 * slope * offset + 2.0 * slope * radius;
    const LocalStress edge =
        hole_edge_stress(thickness, width, {0.0, 2.0 * radius, offset}, moment);
    CHECK_THAT(edge.local_mpa, WithinRel(expected, 1e-3));
    CHECK_THAT(edge.factor, WithinRel(3.0, 1e-3));
}

TEST_CASE("the near edge of a hole takes the sign of its face", "[strength][property]") {
    const auto edge = [](double offset, double moment) {
        return hole_edge_stress(3.8, 2.3, {0.0, 1.5, offset}, moment).local_mpa;
    };
    // A moment that bends the pad outward pulls the belly.
    CHECK(edge(-0.3, 1000.0) > 0.0);
    CHECK(edge(0.3, 1000.0) < 0.0);
    CHECK(edge(-0.3, -1000.0) < 0.0);
    CHECK_THAT(edge(0.3, -1000.0), WithinRel(edge(-0.3, 1000.0), 1e-14));
    CHECK_THAT(edge(-0.3, 2000.0), WithinRel(2.0 * edge(-0.3, 1000.0), 1e-14));
    // On the mid-line either edge is in tension, whichever way the moment turns.
    CHECK(edge(0.0, 1000.0) > 0.0);
    CHECK(edge(0.0, -1000.0) == edge(0.0, 1000.0));
    CHECK(edge(0.0, 0.0) == 0.0);
}

TEST_CASE("the more a hole stands off the mid-line, the more its edge carries",
          "[strength][property]") {
    double last = 0.0;
    for (double offset = 0.0; offset < 0.7; offset += 0.05) {
        const double local = hole_edge_stress(3.8, 2.3, {0.0, 1.5, -offset}, 1000.0).local_mpa;
        CAPTURE(offset);
        CHECK(local > last);
        last = local;
    }
}

TEST_CASE("holes outside the checked range are refused", "[strength][rules]") {
    CHECK_THROWS_WITH(hole_edge_stress(4.0, 2.0, {0.0, 3.2, 0.0}, 1.0),
                      ContainsSubstring("hole diameter over thickness: must be from 0 to 0.75"));
    CHECK_THROWS_WITH(hole_edge_stress(4.0, 2.0, {0.0, 2.0, 0.7}, 1.0),
                      ContainsSubstring("near face over thickness: must be from 0.1 to 0.5"));
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS(hole_edge_stress(nan, 2.0, {0.0, 2.0, 0.0}, 1.0), OutOfRange);
    CHECK_THROWS_AS(hole_edge_stress(4.0, 2.0, {0.0, -1.0, 0.0}, 1.0), OutOfRange);
    CHECK_THROWS_AS(hole_tension_factor(1.01), OutOfRange);
}

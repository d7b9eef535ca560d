#include <cmath>
#include <limits>
#include <vector>

#include "backspring/core/error.hpp"
#include "backspring/spring/bending.hpp"
#include "backspring/spring/flexibility.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

Spring strip(Profile thickness, SupportKind kind = SupportKind::clamped) {
    Spring spring;
    spring.thickness = std::move(thickness);
    spring.width_mm = 2.5;
    spring.support = {.kind = kind, .rear_pin_mm = 25.0, .root_stiffness_nmm_per_rad = 1e5};
    spring.elastic = {.youngs_modulus_mpa = 207000.0, .poisson = 0.29375};  // G = 80000 MPa
    return spring;
}

double bending_only(const Flexibility& f, double x) {
    return deflection_per_force(f, x, x) - bending_integrals(f, x).shear;
}

}  // namespace

TEST_CASE("tip deflection of a cantilever is F L^3 / 3EI plus shear", "[spring][closed form]") {
    const Flexibility f = make_flexibility(strip({{0.0, 3.0}}));
    const double bending = 60.0 * 60.0 * 60.0 / (3.0 * 207000.0 * 5.625);
    const double shear = 60.0 / (5.0 / 6.0 * 80000.0 * 7.5);
    CHECK_THAT(deflection_per_force(f, 60.0, 60.0), WithinRel(bending + shear, kRounding));
    CHECK_THAT(slope_per_force(f, 70.0, 60.0),
               WithinRel(60.0 * 60.0 / (2.0 * 207000.0 * 5.625), kRounding));
}

TEST_CASE("ahead of the force a cantilever is straight", "[spring][closed form]") {
    const Flexibility f = make_flexibility(strip({{0.0, 3.0}}));
    const double slope = slope_per_force(f, 40.0, 20.0);
    CHECK_THAT(deflection_per_force(f, 40.0, 20.0),
               WithinRel(deflection_per_force(f, 20.0, 20.0) + 20.0 * slope, kRounding));
}

TEST_CASE("an overhang on two pins deflects P a^2 (L + a) / 3EI plus shear",
          "[spring][closed form]") {
    const double a = 40.0, span = 25.0, inertia = 2.5 * 3.5 * 3.5 * 3.5 / 12.0, area = 8.75;
    const Flexibility f = make_flexibility(strip({{0.0, 3.5}}, SupportKind::two_pins));
    const double bending = a * a * (span + a) / (3.0 * 207000.0 * inertia);
    const double shear = a * (1.0 + a / span) / (5.0 / 6.0 * 80000.0 * area);
    CHECK_THAT(deflection_per_force(f, a, a), WithinRel(bending + shear, kRounding));
    // The same figures to ten digits, from an independent high-precision evaluation.
    CHECK_THAT(30.0 * bending, WithinRel(0.5624709511, 1e-9));
    CHECK_THAT(30.0 * shear, WithinRel(0.0053485714, 1e-8));
}

TEST_CASE("a straight taper follows its logarithms", "[spring][closed form]") {
    const double n = GENERATE(0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.75, 0.8, 0.9);
    CAPTURE(n);
    const double length = 40.0, e = 1.0 - n, inertia = 2.5 * 64.0 / 12.0;
    const Flexibility f = make_flexibility(strip({{0.0, 4.0}, {length, 4.0 * n}}));
    const double uniform = length * length * length / (3.0 * 207000.0 * inertia);
    const double k = 3.0 / (e * e * e) * (-std::log(n) - e * (3.0 - n) / 2.0);
    CHECK_THAT(bending_only(f, length), WithinRel(uniform * k, 1e-12));
    const double shear = length * -std::log(n) / (e * 4.0 * 2.5 * 80000.0 * 5.0 / 6.0);
    CHECK_THAT(bending_integrals(f, length).shear, WithinRel(shear, 1e-12));
}

TEST_CASE("the slightest taper loses no digits", "[spring][closed form]") {
    // K(1 - e) = sum 3 e^j / (j + 3): no difference of large numbers, good on both sides of 0.
    const double e = GENERATE(0.0, 1e-15, 1e-12, 1e-9, -1e-9, 1e-6, 1e-3, -1e-3, 0.0999999,
                              0.1000001, -0.0999999, -0.1000001, 0.3);
    CAPTURE(e);
    double k = 0.0, power = 1.0;
    for (int j = 0; j < 60; ++j, power *= e) k += 3.0 * power / (j + 3);
    const double length = 40.0, inertia = 2.5 * 64.0 / 12.0;
    const Flexibility f = make_flexibility(strip({{0.0, 4.0}, {length, 4.0 * (1.0 - e)}}));
    const double uniform = length * length * length / (3.0 * 207000.0 * inertia);
    CHECK_THAT(bending_only(f, length), WithinRel(uniform * k, 1e-12));
}

TEST_CASE("a stepped cantilever is the sum of its parts", "[spring][closed form]") {
    // (P/3E) [c^3/I1 + (L^3 - c^3)/I2], tip part c = 25 with h = 2, rest h = 3.
    const Flexibility f =
        make_flexibility(strip({{0.0, 3.0}, {35.0, 3.0}, {35.0, 2.0}, {60.0, 2.0}}));
    const double i1 = 2.5 * 8.0 / 12.0, i2 = 2.5 * 27.0 / 12.0, c3 = 25.0 * 25.0 * 25.0;
    const double bending = (c3 / i1 + (216000.0 - c3) / i2) / (3.0 * 207000.0);
    CHECK_THAT(bending_only(f, 60.0), WithinRel(bending, 1e-12));
    CHECK_THAT(20.0 * bending, WithinRel(1.4491859009, 1e-10));
}

TEST_CASE("stations next to each other to the last bit are a step", "[spring][abuse]") {
    Spring step = designs::heron().spring, hair = step;
    step.thickness = {{-38.0, 3.2}, {7.0, 3.1}, {7.0, 3.0}, {36.5, 2.5}};
    hair.thickness = step.thickness;
    hair.thickness[2].x_mm = std::nextafter(7.0, 8.0);
    const double expected = deflection_per_force(make_flexibility(step), 32.0, 32.0);
    CHECK_THAT(deflection_per_force(make_flexibility(hair), 32.0, 32.0),
               WithinRel(expected, 1e-12));
}

TEST_CASE("a root stiffness adds a turn of the whole spring", "[spring][closed form]") {
    const Flexibility hard = make_flexibility(strip({{0.0, 3.0}}));
    const Flexibility soft = make_flexibility(strip({{0.0, 3.0}}, SupportKind::root_stiffness));
    CHECK_THAT(deflection_per_force(soft, 30.0, 20.0),
               WithinRel(deflection_per_force(hard, 30.0, 20.0) + 30.0 * 20.0 / 1e5, kRounding));
}

TEST_CASE("with the rear pin out the spring only turns", "[spring][closed form]") {
    const Flexibility f = free_rotation();
    CHECK(deflection_per_force(f, 30.0, 20.0) == 600.0);
    CHECK(slope_per_force(f, 30.0, 20.0) == 20.0);
    CHECK(slope_per_force(f, 20.0, 20.0) == 20.0);
}

TEST_CASE("deflection is the same when force and place are swapped", "[spring][property]") {
    for (const auto& [name, design] : designs::all()) {
        const Flexibility f = make_flexibility(design.spring);
        for (double x = 0.5; x < 36.0; x += 2.3) {
            CAPTURE(name, x);
            CHECK(deflection_per_force(f, x, 29.0) == deflection_per_force(f, 29.0, x));
        }
    }
}

TEST_CASE("slope is the derivative of deflection", "[spring][property]") {
    constexpr double h = 1e-3;
    for (const auto& [name, design] : designs::all()) {
        const Flexibility f = make_flexibility(design.spring);
        // Clear of kinks and of 0, where a step would end outside the stretch.
        for (const double x : {0.4, 3.1, 5.0, 8.2, 14.5, 24.0, 31.0, 34.0}) {
            CAPTURE(name, x);
            const auto c = [&](double at) { return deflection_per_force(f, at, 30.0); };
            const double derivative =
                (8.0 * (c(x + h) - c(x - h)) - (c(x + 2.0 * h) - c(x - 2.0 * h))) / (12.0 * h);
            // Rounding of a deflection about ten slopes large, over the step: 1e-12.
            CHECK_THAT(slope_per_force(f, x, 30.0), WithinRel(derivative, 1e-10));
        }
    }
}

TEST_CASE("under the force the slope is the mean of both sides", "[spring][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Flexibility f = make_flexibility(design.spring);
        const double behind = slope_per_force(f, 30.0 - 1e-9, 30.0);
        const double ahead = slope_per_force(f, 30.0 + 1e-9, 30.0);
        CHECK(behind > ahead);
        CHECK_THAT(slope_per_force(f, 30.0, 30.0), WithinRel(0.5 * (behind + ahead), 1e-9));
    }
}

TEST_CASE("half the rate of a point's own compliance is the mean slope", "[spring][property]") {
    constexpr double h = 1e-3;
    const Flexibility f = make_flexibility(designs::godwit().spring);
    const double x = GENERATE(0.4, 5.0, 14.5, 31.0);
    const auto c = [&](double at) { return deflection_per_force(f, at, at); };
    const double rate =
        (8.0 * (c(x + h) - c(x - h)) - (c(x + 2.0 * h) - c(x - 2.0 * h))) / (12.0 * h);
    CHECK_THAT(slope_per_force(f, x, x), WithinRel(0.5 * rate, 1e-10));
}

TEST_CASE("several stations at once are told as one by one", "[spring][property]") {
    const Flexibility f = make_flexibility(designs::heron().spring);
    // Of the taper under the pad, and beyond the spring's end.
    const std::vector<std::vector<double>> stretches{{25.5, 27.0, 31.9, 36.2}, {36.9, 38.0, 41.0}};
    for (const auto& stations : stretches) {
        OwnCompliances all{};
        REQUIRE(own_compliances(f, stations, all));
        for (std::size_t i = 0; i < stations.size(); ++i) {
            const OwnCompliance one = own_compliance(f, stations[i]);
            CHECK_THAT(all.mm_per_n[i], WithinRel(one.mm_per_n, kRounding));
            CHECK_THAT(all.rad_per_n[i], WithinRel(one.rad_per_n, kRounding));
            CHECK_THAT(all.rad_per_nmm[i], WithinRel(one.rad_per_nmm, kRounding));
            CHECK((all.from_mm == one.from_mm && all.to_mm == one.to_mm));
        }
    }
    // At the pin's hole a parabola tells nothing.
    OwnCompliances none{};
    CHECK_FALSE(own_compliances(f, std::vector{0.5}, none));
    const Flexibility steep = make_flexibility(strip({{0.0, 2.0}, {30.0, 3.0}}));
    CHECK_FALSE(own_compliances(steep, std::vector{20.0}, none));
}

TEST_CASE("stiffness of the worked example agrees with a slow solution", "[spring][oracle]") {
    const Flexibility f = make_flexibility(designs::heron().spring);
    // Five and six printed digits: half a unit of the last is 1e-5 and 1e-6.
    CHECK_THAT(1.0 / deflection_per_force(f, 32.0, 32.0), WithinRel(64.928, 1e-5));
    CHECK_THAT(f.root_rotation_rad_per_nmm, WithinRel(5.78286e-6, 1e-6));
}

TEST_CASE("there is no overhang behind the middle pin", "[spring][abuse]") {
    const Flexibility f = make_flexibility(designs::heron().spring);
    CHECK_THROWS_AS(bending_integrals(f, -1e-9), OutOfRange);
    CHECK_THROWS_AS(deflection_per_force(f, -1.0, 30.0), OutOfRange);
    CHECK_THROWS_AS(slope_per_force(f, 30.0, -1.0), OutOfRange);
    CHECK_THROWS_AS(bending_integrals(f, std::numeric_limits<double>::quiet_NaN()), OutOfRange);
    CHECK_THROWS_WITH(bending_integrals(f, -1.0),
                      "station: must be at least 0 mm (ahead of the middle pin), got -1 mm");
}

TEST_CASE("a hole ahead of the last station counts", "[spring][property]") {
    Spring even = strip({{0.0, 3.0}}), ends_there = strip({{0.0, 3.0}, {40.0, 3.0}});
    const double whole = deflection_per_force(make_flexibility(even), 35.0, 35.0);
    for (Spring* spring : {&even, &ends_there}) spring->holes = {{12.0, 1.5, 0.2}};
    const double pierced = deflection_per_force(make_flexibility(even), 35.0, 35.0);
    CHECK(pierced > 1.001 * whole);
    CHECK_THAT(pierced,
               WithinRel(deflection_per_force(make_flexibility(ends_there), 35.0, 35.0), 1e-13));
    const Load load[] = {{35.0, 20.0}};
    CHECK(peak_stress(make_stress_probe(even), load).stress_mpa ==
          peak_stress(make_stress_probe(ends_there), load).stress_mpa);
}

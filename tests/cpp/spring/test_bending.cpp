#include <vector>

#include "backspring/spring/bending.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

const std::vector<Load> kTwoLoads{{24.0, 20.0}, {33.0, 50.0}};

}  // namespace

TEST_CASE("the moment of a force is force times distance", "[spring][closed form]") {
    const Spring spring = designs::heron().spring;
    CHECK(bending_moment_nmm(spring, kTwoLoads, 30.0) == 150.0);
    CHECK(bending_moment_nmm(spring, kTwoLoads, 0.0) == 20.0 * 24.0 + 50.0 * 33.0);
    CHECK(bending_moment_nmm(spring, kTwoLoads, 33.0) == 0.0);
    CHECK(bending_moment_nmm(spring, kTwoLoads, 36.0) == 0.0);
}

TEST_CASE("behind the middle pin the moment falls straight to the rear pin",
          "[spring][closed form]") {
    const Spring spring = designs::heron().spring;
    const double root = bending_moment_nmm(spring, kTwoLoads, 0.0);
    CHECK_THAT(bending_moment_nmm(spring, kTwoLoads, -17.0), WithinRel(0.5 * root, kRounding));
    CHECK(bending_moment_nmm(spring, kTwoLoads, -34.0) == 0.0);
    CHECK(bending_moment_nmm(spring, kTwoLoads, -37.0) == 0.0);
}

TEST_CASE("a held spring carries no moment behind its root", "[spring][property]") {
    CHECK(bending_moment_nmm(designs::dunlin().spring, kTwoLoads, -1.0) == 0.0);
    CHECK(bending_moment_nmm(designs::curlew().spring, kTwoLoads, -1.0) == 0.0);
}

TEST_CASE("pins hold the spring in balance", "[spring][property]") {
    const PinForces pins = pin_forces(designs::heron().spring, kTwoLoads);
    // Outward counts positive: loads and rear pin against the middle pin.
    CHECK_THAT(20.0 + 50.0 + pins.rear_n, WithinRel(pins.middle_n, kRounding));
    // Moments about the rear pin.
    CHECK_THAT(20.0 * 58.0 + 50.0 * 67.0, WithinRel(pins.middle_n * 34.0, kRounding));
}

TEST_CASE("pin forces of an overhang are P a/L and P (L + a)/L", "[spring][closed form]") {
    Spring spring = designs::heron().spring;
    spring.support.rear_pin_mm = 25.0;
    const std::vector<Load> load{{40.0, 30.0}};
    const PinForces pins = pin_forces(spring, load);
    CHECK(pins.rear_n == 48.0);
    CHECK(pins.middle_n == 78.0);
}

TEST_CASE("stress at the root of a strip is 6 P L / b t^2", "[spring][closed form]") {
    Spring spring = designs::dunlin().spring;
    spring.width_mm = 2.5;
    spring.thickness = {{0.0, 3.0}};
    const std::vector<Load> load{{60.0, 20.0}};
    const FibreStress stress = fibre_stress(spring, load, 0.0);
    CHECK_THAT(stress.belly_mpa, WithinRel(320.0, kRounding));
    CHECK_THAT(stress.back_mpa, WithinRel(-320.0, kRounding));
}

TEST_CASE("pushed outward, the belly is pulled and the back pressed", "[spring][property]") {
    for (double x = -33.0; x < 33.0; x += 3.0) {
        const FibreStress stress = fibre_stress(designs::godwit().spring, kTwoLoads, x);
        CHECK(stress.belly_mpa > 0.0);
        CHECK(stress.back_mpa < 0.0);
    }
}

TEST_CASE("mirrored holes swap the stresses of back and belly", "[spring][property]") {
    Spring spring = designs::godwit().spring, mirrored = spring;
    for (Hole& hole : mirrored.holes) hole.offset_mm = -hole.offset_mm;
    for (const double x : {-34.5, -0.7, 0.0, 0.9, 5.0}) {
        CAPTURE(x);
        const FibreStress a = fibre_stress(spring, kTwoLoads, x);
        const FibreStress b = fibre_stress(mirrored, kTwoLoads, x);
        CHECK(a.back_mpa == -b.belly_mpa);
        CHECK(a.belly_mpa == -b.back_mpa);
    }
}

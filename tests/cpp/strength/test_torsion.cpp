#include <cmath>
#include <numbers>

#include "backspring/strength/torsion.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("the torsion constant is the printed one", "[torsion][published]") {
    // J/(a b^3) by a/b: S. P. Timoshenko, J. N. Goodier, Theory of Elasticity, art. 109, from
    // memory.
    for (const auto& [ratio, share] : {std::pair{1.0, 0.1406},
                                       {1.2, 0.166},
                                       {1.5, 0.196},
                                       {2.0, 0.229},
                                       {3.0, 0.263},
                                       {5.0, 0.291},
                                       {10.0, 0.312}}) {
        CAPTURE(ratio);
        CHECK_THAT(torsion_constant_mm4(2.4 * ratio, 2.4) / (ratio * std::pow(2.4, 4)),
                   WithinAbs(share, 6e-4));
    }
}

TEST_CASE("the torsion constant is the whole series, whichever side is longer", "[torsion]") {
    constexpr double pi = std::numbers::pi;
    for (const auto& [a, b] : {std::pair{2.3, 2.3}, {4.6, 3.1}, {25.0, 2.5}}) {
        double sum = 0.0;
        for (int n = 401; n >= 1; n -= 2) sum += std::tanh(0.5 * n * pi * a / b) / std::pow(n, 5);
        const double series = a * b * b * b / 3.0 * (1.0 - 192.0 / std::pow(pi, 5) * b / a * sum);
        CHECK_THAT(torsion_constant_mm4(a, b), WithinRel(series, 1e-10));
        CHECK(torsion_constant_mm4(b, a) == torsion_constant_mm4(a, b));
    }
    CHECK_THROWS_WITH(torsion_constant_mm4(0.0, -1.0),
                      ContainsSubstring("width_mm") && ContainsSubstring("thickness_mm"));
}

TEST_CASE("an even strip twists by T L / (G J)", "[torsion][closed-form]") {
    const Spring strip = designs::dunlin().spring;
    const double g = strip.elastic.youngs_modulus_mpa / (2.0 * (1.0 + strip.elastic.poisson));
    CHECK_THAT(twist_rad_per_nmm(strip, 32.0),
               WithinRel(32.0 / (g * torsion_constant_mm4(strip.width_mm, 2.6)), 1e-12));
}

TEST_CASE("tapers and holes twist as many short strips do", "[torsion][property]") {
    for (const Design& design : {designs::heron(), designs::godwit(), designs::curlew()}) {
        const Spring& spring = design.spring;
        const double g = spring.elastic.youngs_modulus_mpa / (2.0 * (1.0 + spring.elastic.poisson));
        constexpr int parts = 200000;
        double sum = 0.0;
        for (int i = 0; i < parts; ++i) {
            const double x = 32.0 * (i + 0.5) / parts;
            double steel = thickness_mm(spring.thickness, x);
            for (const Hole& hole : spring.holes) steel -= chord_mm(hole, x);
            sum += 32.0 / parts / (g * torsion_constant_mm4(spring.width_mm, steel));
        }
        CHECK_THAT(twist_rad_per_nmm(spring, 32.0), WithinRel(sum, 1e-5));
    }
}

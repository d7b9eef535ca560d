#include <cmath>

#include "backspring/spring/bending.hpp"
#include "backspring/spring/flexibility.hpp"
#include "backspring/strength/torsion.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

constexpr double kLeafModulus = 207000.0, kLeafShear = 80000.0, kLength = 40.0, kThickness = 3.0;

Spring leaf_of(WidthProfile widths, Profile thickness = {{0.0, kThickness}}) {
    Spring spring;
    spring.thickness = std::move(thickness);
    spring.support = {.kind = SupportKind::clamped};
    spring.elastic = {.youngs_modulus_mpa = kLeafModulus,
                      .poisson = kLeafModulus / (2.0 * kLeafShear) - 1.0};
    spring.widths = std::move(widths);
    spring.width_mm = width_at_mm(spring, 0.0);
    return spring;
}

double at_end(const Spring& spring) {
    return deflection_per_force(make_flexibility(spring), kLength, kLength);
}

double bending_at_end(const Spring& spring) {
    const Flexibility f = make_flexibility(spring);
    return deflection_per_force(f, kLength, kLength) - bending_integrals(f, kLength).shear;
}

}  // namespace

TEST_CASE("a trapezoidal leaf deflects P L^3/(3 E I) times its published factor",
          "[spring][closed form]") {
    // A. M. Wahl, Mechanical Springs, 2nd ed. 1963, flat springs (from memory): with n the width
    // of the end over that of the root, K = 3/(1 - n)^3 [1/2 - 2 n + n^2 (3/2 - ln n)], which goes
    // to 3/2, a leaf of even strength (6 P L^3/(E b t^3)), as n goes to 0.
    const double n = GENERATE(0.02, 0.2, 0.5, 0.9);
    CAPTURE(n);
    const Spring leaf = leaf_of({{0.0, 5.0}, {kLength, 5.0 * n}});
    const double inertia = 5.0 * kThickness * kThickness * kThickness / 12.0, e = 1.0 - n;
    const double factor = 3.0 / (e * e * e) * (0.5 - 2.0 * n + n * n * (1.5 - std::log(n)));
    const double expected = factor * kLength * kLength * kLength / (3.0 * kLeafModulus * inertia);
    // The closed form itself loses digits as n nears 1.
    CHECK_THAT(bending_at_end(leaf), WithinRel(expected, 1e-11));
    const double shear =
        kLength * std::log(1.0 / n) / (5.0 / 6.0 * kLeafShear * kThickness * 5.0 * e);
    CHECK_THAT(at_end(leaf), WithinRel(expected + shear, 1e-11));
}

TEST_CASE("a triangular leaf has one stress all along", "[spring][closed form]") {
    const Spring leaf = leaf_of({{0.0, 5.0}, {kLength, 0.05}});
    const double even = 6.0 * kLength / (5.0 * kThickness * kThickness);
    // Its tip is 1 % of the root, which lowers the stress by as much where that is a tenth of x.
    const std::vector<Load> loads{{kLength, 1.0}};
    for (const double x : {0.0, 10.0, 20.0, 35.0}) {
        const double width = 5.0 - 4.95 * x / kLength;
        const double here = 6.0 * (kLength - x) / (width * kThickness * kThickness);
        CHECK_THAT(fibre_stress(leaf, loads, x).belly_mpa, WithinRel(here, kRounding));
    }
    CHECK_THAT(peak_stress(make_stress_probe(leaf), loads).stress_mpa, WithinRel(even, kRounding));
}

TEST_CASE("the peak on a leaf that narrows and thins is found between stations",
          "[spring][closed form]") {
    // Width and thickness fall together: M/(b t^2) = (L - x)/(1 - q x)^3 peaks where
    // 3 q (L - x) = 1 - q x.
    const double q = 0.018;
    const Spring leaf = leaf_of({{0.0, 5.0}, {kLength, 5.0 * (1.0 - q * kLength)}},
                                {{0.0, 3.0}, {kLength, 3.0 * (1.0 - q * kLength)}});
    const double x = (3.0 * q * kLength - 1.0) / (2.0 * q), share = 1.0 - q * x;
    const double expected = 6.0 * (kLength - x) / (45.0 * share * share * share);
    const PeakStress peak = peak_stress(make_stress_probe(leaf), std::vector<Load>{{kLength, 1.0}});
    CHECK_THAT(peak.stress_mpa, WithinRel(expected, 1e-12));
}

TEST_CASE("relieved sides are the sum of their parts", "[spring][closed form]") {
    const Spring relieved =
        leaf_of({{0.0, 2.3}, {5.0, 2.3}, {5.0, 2.2}, {25.0, 2.2}, {25.0, 2.3}, {kLength, 2.3}});
    const auto piece = [&](double from, double to, double width) {
        const double inertia = width * kThickness * kThickness * kThickness / 12.0;
        const double a = kLength - from, b = kLength - to;
        return (a * a * a - b * b * b) / (3.0 * kLeafModulus * inertia) +
               (to - from) / (5.0 / 6.0 * kLeafShear * kThickness * width);
    };
    CHECK_THAT(at_end(relieved),
               WithinRel(piece(0.0, 5.0, 2.3) + piece(5.0, 25.0, 2.2) + piece(25.0, kLength, 2.3),
                         kRounding));
}

TEST_CASE("rows of one width are that width, at a hole too", "[spring][property]") {
    Spring rows = designs::heron().spring;
    const Spring one = rows;
    rows.widths = {{-38.0, one.width_mm}, {3.0, one.width_mm}, {36.5, one.width_mm}};
    const Flexibility f = make_flexibility(rows), g = make_flexibility(one);
    CHECK_THAT(deflection_per_force(f, 33.0, 28.0),
               WithinRel(deflection_per_force(g, 33.0, 28.0), kRounding));
    CHECK_THAT(f.root_rotation_rad_per_nmm, WithinRel(g.root_rotation_rad_per_nmm, kRounding));
    CHECK_THAT(twist_rad_per_nmm(rows, 32.0), WithinRel(twist_rad_per_nmm(one, 32.0), kRounding));
}

TEST_CASE("another width at the middle pin keeps the rows' shape", "[spring][property]") {
    Spring spring = designs::heron().spring;
    spring.widths = {{-38.0, 2.4}, {0.0, 2.3}, {36.5, 2.1}};
    const Spring wider = with_width(spring, 4.6);
    CHECK(wider.width_mm == 4.6);
    CHECK_THAT(width_at_mm(wider, 36.5), WithinRel(4.2, kRounding));
    CHECK_THAT(
        deflection_per_force(make_flexibility(wider), 32.0, 32.0),
        WithinRel(0.5 * deflection_per_force(make_flexibility(spring), 32.0, 32.0), kRounding));
    const Spring turned = turned_round(spring);
    CHECK(turned.width_mm == width_at_mm(spring, -spring.support.rear_pin_mm));
}

TEST_CASE("slopes are the derivatives of deflections where width varies", "[spring][property]") {
    Spring spring = designs::heron().spring;
    spring.widths = {{-38.0, 2.4}, {0.0, 2.3}, {36.5, 1.9}};
    spring.mid_line = {{-34.0, 0.0}, {0.0, 2.0}, {27.0, 0.0}};
    const Flexibility f = make_flexibility(spring);
    const double x = GENERATE(12.0, 30.0, 34.0), xi = 31.0, h = 1e-4;
    CAPTURE(x);
    const double difference =
        (deflection_per_force(f, x + h, xi) - deflection_per_force(f, x - h, xi)) / (2.0 * h);
    CHECK_THAT(slope_per_force(f, x, xi), WithinRel(difference, 1e-8));
}

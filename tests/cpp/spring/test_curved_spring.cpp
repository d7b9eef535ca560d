#include <cmath>
#include <numbers>

#include "backspring/spring/bending.hpp"
#include "backspring/spring/flexibility.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

constexpr double kModulus = 207000.0, kShear = 80000.0, kWidth = 2.5;

Spring clamped(Profile thickness, MidLine line) {
    Spring spring;
    spring.thickness = std::move(thickness);
    spring.width_mm = kWidth;
    spring.support = {.kind = SupportKind::clamped};
    spring.elastic = {.youngs_modulus_mpa = kModulus, .poisson = kModulus / (2.0 * kShear) - 1.0};
    spring.mid_line = std::move(line);
    return spring;
}

/// A circular arc, level at the clamp, of one thickness square to it.
Spring arc(double radius, double steel, double to_rad, int parts) {
    Profile thickness;
    MidLine line;
    for (int i = 0; i <= parts; ++i) {
        const double phi = to_rad * i / parts;
        const double x = radius * std::sin(phi);
        line.push_back({x, radius * (1.0 - std::cos(phi))});
        thickness.push_back({x, steel / std::cos(phi)});
    }
    return clamped(thickness, line);
}

double at(const Spring& spring, double x) {
    return deflection_per_force(make_flexibility(spring), x, x);
}

}  // namespace

TEST_CASE("a slanted bar bends as one that is cos^(4/3) as thick", "[spring][closed form]") {
    const double lean = GENERATE(0.1, 0.3, -0.6, 1.0), length = 40.0, t = 3.0;
    CAPTURE(lean);
    const double c = std::cos(std::atan(lean)), s2 = 1.0 - c * c;
    const Spring slanted = clamped({{0.0, t}}, {{0.0, 0.0}, {length, lean * length}});
    // Statics of the bar itself: length L/c, thickness t c, force P c across it and P s along it.
    const double steel = t * c, long_mm = length / c;
    const double inertia = kWidth * steel * steel * steel / 12.0, area = kWidth * steel;
    const double bending = length * length * long_mm / (3.0 * kModulus * inertia);
    const double shear = c * c * long_mm / (5.0 / 6.0 * kShear * area);
    const double pull = s2 * long_mm / (kModulus * area);
    CHECK_THAT(at(slanted, length), WithinRel(bending + shear + pull, kRounding));
    const Spring straight = clamped({{0.0, t * std::pow(c, 4.0 / 3.0)}}, {});
    const BendingIntegrals of_straight = bending_integrals(make_flexibility(straight), length);
    const BendingIntegrals of_slanted = bending_integrals(make_flexibility(slanted), length);
    CHECK_THAT(of_slanted.a0, WithinRel(of_straight.a0, kRounding));
    CHECK_THAT(of_slanted.a2, WithinRel(of_straight.a2, kRounding));
}

TEST_CASE("a circular cantilever deflects as Castigliano's theorem has it",
          "[spring][closed form]") {
    // M = P R (sin f1 - sin f), N = P sin f, V = P cos f over the arc 0 to f1.
    const double radius = GENERATE(45.0, 80.0), steel = 3.0, f1 = GENERATE(0.35, 0.75);
    CAPTURE(radius, f1);
    const double s = std::sin(f1), c = std::cos(f1), s2 = std::sin(2.0 * f1);
    const double moments = f1 * s * s - 2.0 * s * (1.0 - c) + f1 / 2.0 - s2 / 4.0;
    const double inertia = kWidth * steel * steel * steel / 12.0, area = kWidth * steel;
    const double bending = radius * radius * radius * moments / (kModulus * inertia);
    const double pull = radius * (f1 / 2.0 - s2 / 4.0) / (kModulus * area);
    const double shear = radius * (f1 / 2.0 + s2 / 4.0) / (5.0 / 6.0 * kShear * area);
    // Chords of 1/200 of the arc miss it by less than 1/200^2.
    CHECK_THAT(at(arc(radius, steel, f1, 200), radius * s),
               WithinRel(bending + shear + pull, 2e-5));
}

TEST_CASE("of a quarter ring's Winkler-Bach stiffness the beam leaves out less than (t/r)^2/6",
          "[spring][closed form]") {
    // S. Timoshenko, Strength of Materials II, 3rd ed. 1956, art. 15 (from memory): energy of a
    // curved bar, U = int M^2/(2 A e E R) - M N/(A E R) + N^2/(2 A E) + V^2/(2 k A G) ds, with e
    // the shift of the neutral axis. Half of a quarter ring, clamped where it is level.
    const double radius = GENERATE(20.0, 30.0, 60.0), steel = 3.0, f1 = std::numbers::pi / 4.0;
    CAPTURE(radius);
    const double shift = radius - steel / std::log((radius + 0.5 * steel) / (radius - 0.5 * steel));
    const double area = kWidth * steel, end = std::sin(f1);
    double sum = 0.0;
    constexpr int parts = 4000;
    for (int i = 0; i < parts; ++i) {
        const double phi = f1 * (i + 0.5) / parts;
        const double m = radius * (end - std::sin(phi)), n = std::sin(phi), v = std::cos(phi);
        // The ring's centre is on the back's side: the moment closes the ring.
        sum +=
            f1 / parts * radius *
            (m * m / (area * shift * kModulus * radius) - 2.0 * m * n / (area * kModulus * radius) +
             n * n / (area * kModulus) + v * v / (5.0 / 6.0 * area * kShear));
    }
    const double off = at(arc(radius, steel, f1, 400), radius * end) / sum - 1.0;
    CHECK(off > 0.0);
    CHECK(off < steel * steel / (6.0 * radius * radius));
}

TEST_CASE("stress takes the thickness square to the mid-line", "[spring][closed form]") {
    const double lean = 0.3, c2 = 1.0 / (1.0 + lean * lean), t = 3.0;
    const Spring spring = clamped({{0.0, t}}, {{0.0, 0.0}, {40.0, 12.0}});
    const std::vector<Load> loads{{40.0, 10.0}};
    const double expected = 6.0 * 300.0 / (kWidth * t * t * c2);
    CHECK_THAT(fibre_stress(spring, loads, 10.0).belly_mpa, WithinRel(expected, kRounding));
    CHECK_THAT(peak_stress(make_stress_probe(spring), loads).stress_mpa,
               WithinRel(expected * 4.0 / 3.0, kRounding));
}

TEST_CASE("a mid-line's height alone changes nothing", "[spring][property]") {
    const Spring straight = clamped({{0.0, 3.0}, {40.0, 2.0}}, {});
    const Spring lifted = clamped({{0.0, 3.0}, {40.0, 2.0}}, {{0.0, 5.0}, {40.0, 5.0}});
    CHECK(at(lifted, 33.0) == at(straight, 33.0));
}

TEST_CASE("a bow gives the same inward and outward, and whichever end it is seen from",
          "[spring][property]") {
    Spring spring = designs::heron().spring;
    spring.mid_line = {{-34.0, 0.0}, {-10.0, 2.0}, {10.0, 2.5}, {27.0, 0.0}};
    Spring other = spring;
    for (MidLinePoint& point : other.mid_line) point.height_mm *= -1.0;
    CHECK(at(other, 32.0) == at(spring, 32.0));
    const Spring back = turned_round(turned_round(spring));
    CHECK_THAT(at(back, 32.0), WithinRel(at(spring, 32.0), kRounding));
    const Spring turned = turned_round(spring);
    CHECK(slope(turned.mid_line, -40.0) == -slope(spring.mid_line, 6.0));
}

TEST_CASE("the lever of a force along the pad is the mid-line's height over its face",
          "[spring][property]") {
    Spring spring = designs::heron().spring;
    const Pad pad{27.0, 36.5};
    const double half = 0.5 * thickness_mm(spring.thickness, 31.75);
    CHECK(mid_line_mm(spring, pad, 0.0) == 1.9);
    CHECK(belly_mm(spring, pad, 0.0) == 0.0);
    spring.mid_line = {{0.0, 3.0}, {27.0, 0.0}};
    CHECK(mid_line_mm(spring, pad, 0.0) == half + 3.0);
    CHECK(mid_line_mm(spring, pad, 30.0) == half);
    CHECK_THAT(belly_mm(spring, pad, 0.0), WithinRel(half + 3.0 - 1.9, kRounding));
}

TEST_CASE("hollow stretches of a mid-line have the radius of the circle they lie on",
          "[spring][closed form]") {
    MidLine line;
    for (int i = -10; i <= 10; ++i) {
        const double phi = 0.04 * i;
        line.push_back({60.0 * std::sin(phi), 60.0 * std::cos(phi)});
    }
    const auto hollow = hollow_curves(line);
    REQUIRE(hollow.size() == 19);
    for (const HollowCurve& curve : hollow) CHECK_THAT(curve.radius_mm, WithinRel(60.0, 1e-9));
    for (MidLinePoint& point : line) point.height_mm *= -1.0;
    CHECK(hollow_curves(line).empty());
}

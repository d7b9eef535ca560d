#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

#include "backspring/spring/flexibility.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

/// Simpson's rule between two places where the integrand may have a square root's edge: the
/// substitution s^2 (3 - 2s) makes both ends smooth.
double simpson(const std::function<double(double)>& f, double from, double to) {
    constexpr int parts = 4000;
    double sum = 0.0;
    for (int i = 1; i < parts; ++i) {
        const double s = static_cast<double>(i) / parts;
        const double weight = i % 2 == 1 ? 4.0 : 2.0;
        const double x = from + (to - from) * s * s * (3.0 - 2.0 * s);
        sum += weight * f(x) * 6.0 * s * (1.0 - s);
    }
    return sum * (to - from) / (3.0 * parts);
}

double integral(const Spring& spring,
                const std::function<double(double)>& f,
                double from,
                double to) {
    std::vector<double> places{from, to};
    for (const Station& s : spring.thickness) places.push_back(std::clamp(s.x_mm, from, to));
    for (const Hole& h : spring.holes) {
        for (const double side : {-0.5, 0.5}) {
            places.push_back(std::clamp(h.center_mm + side * h.diameter_mm, from, to));
        }
    }
    std::sort(places.begin(), places.end());
    double sum = 0.0;
    for (std::size_t i = 0; i + 1 < places.size(); ++i) {
        if (places[i + 1] > places[i]) sum += simpson(f, places[i], places[i + 1]);
    }
    return sum;
}

/// The worked example with its holes changed.
Spring pierced(double share_of_thickness, double offset_mm) {
    Spring spring = designs::heron().spring;
    const double d = 3.8 * share_of_thickness;
    const double rear = thickness_mm(spring.thickness, -34.0) * std::min(share_of_thickness, 0.7);
    spring.holes = {{-34.0, rear, offset_mm}, {0.0, d, offset_mm}, {15.0, 1.2, 0.3}};
    return spring;
}

}  // namespace

TEST_CASE("integrals past holes agree with brute force", "[spring][oracle]") {
    struct Row {
        double share, offset_mm;
    };
    const Row row = GENERATE(Row{0.5, 0.0}, Row{0.6, 0.3}, Row{0.6, -0.3}, Row{0.9, 0.0},
                             Row{0.9, 0.1}, Row{0.3, 0.5});
    CAPTURE(row.share, row.offset_mm);
    const Spring spring = pierced(row.share, row.offset_mm);
    const Flexibility f = make_flexibility(spring);
    const double e = spring.elastic.youngs_modulus_mpa;
    const double kg = kShearFactor * shear_modulus_mpa(spring.elastic);
    const auto bending = [&](int n) {
        return [&spring, e, n](double x) {
            return std::pow(x, n) / (e * section_at(spring, x).inertia_mm4);
        };
    };
    const auto shear = [&](double x) { return 1.0 / (kg * section_at(spring, x).area_mm2); };
    for (const double x : {0.4, 1.0, 6.0, 15.2, 31.0}) {
        CAPTURE(x);
        const BendingIntegrals i = bending_integrals(f, x);
        CHECK_THAT(i.a0, WithinRel(integral(spring, bending(0), 0.0, x), 1e-10));
        CHECK_THAT(i.a1, WithinRel(integral(spring, bending(1), 0.0, x), 1e-10));
        CHECK_THAT(i.a2, WithinRel(integral(spring, bending(2), 0.0, x), 1e-10));
        CHECK_THAT(i.shear, WithinRel(integral(spring, shear, 0.0, x), 1e-10));
    }
    const auto rear = [&](double x) {
        return (x + 34.0) * (x + 34.0) / (e * section_at(spring, x).inertia_mm4) + shear(x);
    };
    CHECK_THAT(f.root_rotation_rad_per_nmm,
               WithinRel(integral(spring, rear, -34.0, 0.0) / (34.0 * 34.0), 1e-10));
}

TEST_CASE("a vanishing hole leaves a whole spring", "[spring][convergence]") {
    Spring whole = designs::heron().spring, small = whole;
    whole.holes.clear();
    small.holes = {{0.0, 1e-4, 0.0}, {12.0, 1e-4, 0.0}};
    const double c = deflection_per_force(make_flexibility(whole), 32.0, 32.0);
    // The hole takes (d/t)^3 of the bending stiffness over a length d: far below 1e-9.
    CHECK_THAT(deflection_per_force(make_flexibility(small), 32.0, 32.0), WithinRel(c, 1e-9));
}

TEST_CASE("integrals are continuous where a hole begins and ends", "[spring][property]") {
    const Flexibility f = make_flexibility(pierced(0.9, 0.1));
    for (const double edge : {1.71, 14.4, 15.0, 15.6}) {
        CAPTURE(edge);
        const double gap =
            bending_integrals(f, edge + 1e-9).a0 - bending_integrals(f, edge - 1e-9).a0;
        CHECK(gap > 0.0);
        CHECK(gap < 1e-8 * bending_integrals(f, edge).a0);
    }
}

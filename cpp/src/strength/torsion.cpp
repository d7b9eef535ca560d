#include "backspring/strength/torsion.hpp"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <numbers>

#include "backspring/core/function_ref.hpp"
#include "backspring/core/require.hpp"
#include "backspring/spring/stretches.hpp"

namespace backspring {
namespace {

constexpr double kLongestSideMm = 1e6;
// What is left of the sum behind this odd number is below rounding, even of a square.
constexpr int kLastOdd = 11;
// The sum of 1/n^5 over odd n, 31/32 of Riemann's zeta(5).
constexpr double kOddFifths = 31.0 / 32.0 * 1.0369277551433699263;

/// Gauss-Legendre; across a hole in the angle round it.
double integrate(const Stretch& stretch, FunctionRef value) {
    using Rule = boost::math::quadrature::gauss<double, 20>;
    if (stretch.hole.diameter_mm == 0.0) {
        return Rule::integrate(value, stretch.start_mm, stretch.end_mm);
    }
    const double radius = 0.5 * stretch.hole.diameter_mm, center = stretch.hole.center_mm;
    const auto angle = [&](double x) {
        return std::asin(std::clamp((x - center) / radius, -1.0, 1.0));
    };
    const auto round_hole = [&](double phi) {
        return value(center + radius * std::sin(phi)) * radius * std::cos(phi);
    };
    return Rule::integrate(round_hole, angle(stretch.start_mm), angle(stretch.end_mm));
}

}  // namespace

double torsion_constant_mm4(double width_mm, double thickness_mm) {
    Requirements rules;
    rules.positive("width_mm", width_mm, kLongestSideMm, "mm");
    rules.positive("thickness_mm", thickness_mm, kLongestSideMm, "mm");
    rules.throw_if_any();
    constexpr double pi = std::numbers::pi;
    const double a = std::max(width_mm, thickness_mm), b = std::min(width_mm, thickness_mm);
    // What tanh lacks of 1 dies off with exp(-n pi).
    double sum = kOddFifths;
    for (int n = 1; n <= kLastOdd; n += 2) {
        const double lacks = 2.0 / (std::exp(n * pi * a / b) + 1.0);
        sum -= lacks / std::pow(n, 5);
    }
    return a * b * b * b / 3.0 * (1.0 - 192.0 / std::pow(pi, 5) * b / a * sum);
}

double twist_rad_per_nmm(const Spring& spring, double to_mm) {
    double twist = 0.0;
    for (const Stretch& stretch : cut_into_stretches(spring, 0.0, to_mm)) {
        const auto per_length = [&](double x) {
            const double steel =
                thickness_mm(stretch, x) * stretch.cosine - chord_mm(stretch.hole, x);
            const double width = spring.width_mm * width_share(stretch, x);
            return 1.0 / torsion_constant_mm4(width, steel) / stretch.cosine;
        };
        twist += integrate(stretch, per_length);
    }
    return twist / shear_modulus_mpa(spring.elastic);
}

}  // namespace backspring

#include "backspring/strength/contact_pressure.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "backspring/core/require.hpp"

namespace backspring {
namespace {

// Greatest shear below a line contact, over p0, and its depth, over a.
constexpr double kShearShare = 0.30028310;
constexpr double kShearDepth = 0.78615138;
constexpr double kFirstYield = 1.79;
constexpr double kHardnessOverYield = 3.0;
constexpr double kMpaPerHv = 9.80665;

void require_line(Requirements& rules, double force, double length, double modulus) {
    rules.in_range("force_n", force, 0.0, 1e9, "N");
    rules.positive("length_mm", length, 1e6, "mm");
    rules.positive("modulus_mpa", modulus, 1e12, "MPa");
}

}  // namespace

double contact_modulus_mpa(const Elastic& one, const Elastic& other) {
    const auto give = [](const Elastic& body) {
        return (1.0 - body.poisson * body.poisson) / body.youngs_modulus_mpa;
    };
    return 1.0 / (give(one) + give(other));
}

LineContact line_contact(double force_n, double length_mm, double radius_mm, double modulus_mpa) {
    Requirements rules;
    require_line(rules, force_n, length_mm, modulus_mpa);
    rules.require(radius_mm >= 0.0, "radius_mm",
                  [&] { return "must be at least 0 mm, got " + with_unit(radius_mm, "mm"); });
    rules.throw_if_any();
    LineContact contact;
    if (force_n == 0.0) return contact;
    constexpr double infinite = std::numeric_limits<double>::infinity();
    contact.half_width_mm =
        std::sqrt(4.0 * force_n * radius_mm / (std::numbers::pi * length_mm * modulus_mpa));
    contact.peak_mpa = radius_mm == 0.0
                           ? infinite
                           : 2.0 * force_n / (std::numbers::pi * contact.half_width_mm * length_mm);
    contact.mean_mpa = 0.25 * std::numbers::pi * contact.peak_mpa;
    contact.shear_mpa = kShearShare * contact.peak_mpa;
    contact.shear_depth_mm = kShearDepth * contact.half_width_mm;
    return contact;
}

double first_yield_pressure_mpa(double yield_mpa) { return kFirstYield * yield_mpa; }

double least_corner_radius_mm(double force_n,
                              double length_mm,
                              double modulus_mpa,
                              double limit_mpa) {
    Requirements rules;
    require_line(rules, force_n, length_mm, modulus_mpa);
    rules.positive("limit_mpa", limit_mpa, 1e9, "MPa");
    rules.throw_if_any();
    return force_n * modulus_mpa / (std::numbers::pi * length_mm * limit_mpa * limit_mpa);
}

bool galling_caution(double tang_hrc, double spring_hrc) {
    return std::abs(tang_hrc - spring_hrc) > kGallingGapHrc;
}

}  // namespace backspring

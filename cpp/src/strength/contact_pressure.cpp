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

double relative_radius_mm(double one_mm, double other_mm) {
    if (one_mm == 0.0 || other_mm == 0.0) return 0.0;
    return 1.0 / (1.0 / one_mm + 1.0 / other_mm);
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
    contact.half_width_mm = std::sqrt(4.0 * force_n * radius_mm / (std::numbers::pi * length_mm * modulus_mpa));
    contact.peak_mpa =
        radius_mm == 0.0 ? infinite : 2.0 * force_n / (std::numbers::pi * contact.half_width_mm * length_mm);
    contact.mean_mpa = 0.25 * std::numbers::pi * contact.peak_mpa;
    contact.shear_mpa = kShearShare * contact.peak_mpa;
    contact.shear_depth_mm = kShearDepth * contact.half_width_mm;
    return contact;
}

double StressBelow::shear_mpa() const {
    const auto [low, high] = std::minmax({along_line_mpa, along_face_mpa, normal_mpa});
    return 0.5 * (high - low);
}

double StressBelow::von_mises_mpa() const {
    return std::hypot(along_line_mpa - along_face_mpa, along_face_mpa - normal_mpa,
                      normal_mpa - along_line_mpa) /
           std::numbers::sqrt2;
}

StressBelow stress_below(const LineContact& contact, double poisson, double depth_mm) {
    if (!(contact.half_width_mm > 0.0) || std::isinf(contact.half_width_mm)) {
        throw OutOfRange("contact: must have a finite width, got " +
                         with_unit(2.0 * contact.half_width_mm, "mm"));
    }
    const double p0 = contact.peak_mpa, z = depth_mm / contact.half_width_mm;
    const double root = std::sqrt(1.0 + z * z);
    return {.along_line_mpa = -2.0 * poisson * p0 * (root - z),
            .along_face_mpa = -p0 * ((1.0 + 2.0 * z * z) / root - 2.0 * z),
            .normal_mpa = -p0 / root};
}

SlidingStress sliding_stress(const LineContact& contact, double friction) {
    if (!(friction >= 0.0 && friction <= 1.0)) {
        throw OutOfRange("friction: must be from 0 to 1, got " + with_unit(friction, ""));
    }
    return {.tension_mpa = 2.0 * friction * contact.peak_mpa,
            .compression_mpa = -contact.peak_mpa * (friction + std::hypot(1.0, friction))};
}

double first_yield_pressure_mpa(double yield_mpa) { return kFirstYield * yield_mpa; }

double first_yield_pressure_of_hardness_mpa(double vickers_hv) {
    return first_yield_pressure_mpa(kMpaPerHv * vickers_hv / kHardnessOverYield);
}

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

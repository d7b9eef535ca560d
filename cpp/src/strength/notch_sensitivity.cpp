#include "backspring/strength/notch_sensitivity.hpp"

#include <cmath>

#include "within.hpp"

namespace backspring {
namespace {

constexpr double kMmPerInch = 25.4;
constexpr double kSoftestMpa = 340.0;
constexpr double kHardestMpa = 1700.0;

}  // namespace

double neuber_root_length(double tensile_mpa) {
    require_at_least("tensile strength in MPa", tensile_mpa, kSoftestMpa);
    if (tensile_mpa > kHardestMpa) return 0.0;
    const double s = tensile_mpa / kMpaPerKpsi;
    return (0.246 + s * (-3.08e-3 + s * (1.51e-5 - 2.67e-8 * s))) * std::sqrt(kMmPerInch);
}

double notch_sensitivity(double tensile_mpa, double root_radius_mm) {
    if (!(root_radius_mm > 0.0)) {
        throw OutOfRange("root radius: must be greater than 0 mm, got " +
                         with_unit(root_radius_mm, "mm"));
    }
    return 1.0 / (1.0 + neuber_root_length(tensile_mpa) / std::sqrt(root_radius_mm));
}

double fatigue_notch_factor(double factor, double sensitivity) {
    return 1.0 + sensitivity * (factor - 1.0);
}

}  // namespace backspring

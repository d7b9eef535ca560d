#include "backspring/strength/plastic_strain.hpp"

#include <algorithm>
#include <array>

#include "backspring/core/curve.hpp"

namespace backspring {
namespace {

constexpr std::array<CurvePoint, 5> kElongation{
    {{896.0, 0.20}, {1165.0, 0.12}, {1606.0, 0.10}, {2000.0, 0.09}, {2220.0, 0.04}}};
constexpr double kHighCarbonShare = 0.5;
constexpr double kToughestShare = 1.2;
constexpr double kFoldLength = 1.75;

}  // namespace

double notch_plastic_strain(double local_mpa, double yield_mpa, double youngs_modulus_mpa) {
    if (!(local_mpa > yield_mpa)) return 0.0;
    return (local_mpa * local_mpa / yield_mpa - yield_mpa) / youngs_modulus_mpa;
}

double fold_plastic_strain(double turn_rad, double thickness_mm, double chord_mm) {
    return kFoldLength * turn_rad * thickness_mm / (thickness_mm - chord_mm);
}

Band elongation(double tensile_mpa) {
    const double at = std::clamp(tensile_mpa, kElongation.front().x, kElongation.back().x);
    const double value = interpolate(kElongation, at, "elongation");
    return {.value = value, .low = kHighCarbonShare * value, .high = kToughestShare * value};
}

}  // namespace backspring

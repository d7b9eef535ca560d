#pragma once

#include "backspring/strength/elastic_plastic.hpp"

namespace backspring::detail {

// A section this near its plastic moment turns as a hinge: with a trace of stiffness, so that the
// moment goes on rising with the curvature and every rise has its force.
inline constexpr double kHingeShare = 1.0 - 1e-5;
inline constexpr double kHingeSoftness = 1e7;

/// Curvature that stays after a moment, hinges included [1/mm].
[[nodiscard]] inline double residual_curvature(const PlasticSection& section, double moment) {
    const double hinge = kHingeShare * section.plastic_moment_nmm;
    if (moment <= hinge) return residual_curvature_per_mm(section, moment);
    return residual_curvature_per_mm(section, hinge) +
           kHingeSoftness * (moment - hinge) / (section.youngs_modulus_mpa * section.inertia_mm4);
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

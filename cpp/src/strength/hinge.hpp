#pragma once

#include "backspring/strength/elastic_plastic.hpp"

namespace backspring::detail {

// A section this near its plastic moment turns as a hinge: with a trace of stiffness, so that the
// moment goes on rising with the curvature and every rise has its force.
inline constexpr double kHingeShare = 1.0 - 1e-5;
inline constexpr double kHingeSoftness = 1e7;

/// Curvature that stays after a moment, and how fast it grows with that.
struct Residual {
    double per_mm = 0.0;    ///< [1/mm]
    double per_nmm2 = 0.0;  ///< [1/(N mm2)]
};

/// What stays after a moment beyond the yield moment, hinges included.
[[nodiscard]] inline Residual residual_of(const PlasticSection& section, double moment) {
    const double elastic = 1.0 / (section.youngs_modulus_mpa * section.inertia_mm4);
    const double hinge = kHingeShare * section.plastic_moment_nmm;
    const double softness = kHingeSoftness * elastic;
    if (moment > hinge) {
        const double at_hinge = bend_section(section, hinge).curvature_per_mm - hinge * elastic;
        return {at_hinge + softness * (moment - hinge), softness};
    }
    const SectionBend bend = bend_section(section, moment);
    return {bend.curvature_per_mm - moment * elastic, curvature_per_nmm2(section, bend) - elastic};
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

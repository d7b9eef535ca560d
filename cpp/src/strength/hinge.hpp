#pragma once

#include <cmath>

#include "backspring/strength/elastic_plastic.hpp"
#include "slotted_section.hpp"

namespace backspring::detail {

// A section this near its plastic moment turns as a hinge: with a trace of stiffness, so that the
// moment goes on rising with the curvature and every rise has its force.
inline constexpr double kHingeShare = 1.0 - 1e-5;
inline constexpr double kHingeSoftness = 1e7;
// Along a taper, in closed form, nearer still; softer than a section that begins to turn so.
inline constexpr double kTaperHingeShare = 1.0 - 1e-6;
inline constexpr double kTaperHingeSoftness = 2e8;

/// Curvature that stays after a moment, and how fast it grows with that.
struct Residual {
    double per_mm = 0.0;    ///< [1/mm]
    double per_nmm2 = 0.0;  ///< [1/(N mm2)]
};

/// The same of a whole section: k = ky/sqrt(3 - 2 M/My).
[[nodiscard]] inline Residual residual_of_whole(const PlasticSection& section, double moment) {
    const double share = moment / section.yield_moment_nmm, left = 3.0 - 2.0 * share;
    const double bend = 1.0 / std::sqrt(left);
    const double elastic = section.yield_curvature_per_mm / section.yield_moment_nmm;
    return {section.yield_curvature_per_mm * (bend - share), elastic * (bend / left - 1.0)};
}

/// The same of a section with a hole on the mid-line, whose core lies about that: the moment grows
/// with the curvature as the core's part of the steel is stiff.
[[nodiscard]] inline Residual residual_about_mid_line(const PlasticSection& s, double moment) {
    const double core =
        core_on_mid_line({s.thickness_mm, s.chord_mm, 0.0}, moment / (s.yield_mpa * s.width_mm));
    const double gap = 0.5 * s.chord_mm, elastic = 1.0 / (s.youngs_modulus_mpa * s.inertia_mm4);
    const double second = 2.0 / 3.0 * (core * core * core - gap * gap * gap);
    return {s.yield_mpa / (s.youngs_modulus_mpa * core) - moment * elastic,
            1.0 / (s.youngs_modulus_mpa * s.width_mm * second) - elastic};
}

/// What stays after a moment beyond the yield moment, hinges included.
[[nodiscard]] inline Residual residual_of(const PlasticSection& section, double moment) {
    const double hinge = kHingeShare * section.plastic_moment_nmm;
    if (section.chord_mm == 0.0 && moment <= hinge) return residual_of_whole(section, moment);
    if (section.offset_mm == 0.0 && moment <= hinge) {
        return residual_about_mid_line(section, moment);
    }
    const double elastic = 1.0 / (section.youngs_modulus_mpa * section.inertia_mm4);
    const double softness = kHingeSoftness * elastic;
    if (moment > hinge) {
        const double at_hinge =
            section.offset_mm == 0.0
                ? residual_about_mid_line(section, hinge).per_mm
                : bend_section(section, hinge).curvature_per_mm - hinge * elastic;
        return {at_hinge + softness * (moment - hinge), softness};
    }
    const SectionBend bend = bend_section(section, moment);
    return {bend.curvature_per_mm - moment * elastic, curvature_per_nmm2(section, bend) - elastic};
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#include "backspring/strength/curved_beam.hpp"

#include <cmath>

#include "backspring/core/require.hpp"

namespace backspring {
namespace {

// Below this thickness over radius the logarithm is as good as 0: the series keeps its digits.
constexpr double kSlight = 0.02;

/// Shift of the neutral axis over the thickness, for a thickness over centroid radius.
double shift_share(double bend) {
    const double h = 0.5 * bend, h2 = h * h;
    if (bend < kSlight) return h / 6.0 * (1.0 + h2 * (4.0 / 15.0 + h2 * 44.0 / 315.0));
    return 1.0 / bend - 0.5 / std::atanh(h);
}

}  // namespace

CurvedSection make_curved_section(double width_mm, double thickness_mm, double inner_radius_mm) {
    Requirements rules;
    rules.positive("width_mm", width_mm, 1e9, "mm");
    rules.positive("thickness_mm", thickness_mm, 1e9, "mm");
    rules.positive("inner_radius_mm", inner_radius_mm, 1e9, "mm");
    rules.throw_if_any();
    CurvedSection section{.thickness_mm = thickness_mm,
                          .width_mm = width_mm,
                          .inner_radius_mm = inner_radius_mm,
                          .outer_radius_mm = inner_radius_mm + thickness_mm,
                          .centroid_radius_mm = inner_radius_mm + 0.5 * thickness_mm};
    section.shift_mm = thickness_mm * shift_share(thickness_mm / section.centroid_radius_mm);
    section.neutral_radius_mm = section.centroid_radius_mm - section.shift_mm;
    return section;
}

CurvedStress curved_stress(const CurvedSection& section, double moment_nmm, double normal_n) {
    const double area = section.width_mm * section.thickness_mm;
    const double inner = section.inner_radius_mm, outer = section.outer_radius_mm;
    const double turn = moment_nmm / (area * section.shift_mm), pull = normal_n / area;
    // Distances from the middle, so that a slight curvature loses no digits.
    const double half = 0.5 * section.thickness_mm;
    return {.inner_mpa = pull + turn * (half - section.shift_mm) / inner,
            .outer_mpa = pull - turn * (half + section.shift_mm) / outer};
}

CurvatureFactors curvature_factors(double thickness_mm, double inner_radius_mm) {
    const CurvedStress stress =
        curved_stress(make_curved_section(1.0, thickness_mm, inner_radius_mm), 1.0);
    const double straight = 6.0 / (thickness_mm * thickness_mm);
    return {stress.inner_mpa / straight, -stress.outer_mpa / straight};
}

}  // namespace backspring

#pragma once

namespace backspring {

/// Rectangle across a beam that is curved before it is loaded.
struct CurvedSection {
    double thickness_mm = 0.0;        ///< from the inner to the outer face [mm]
    double width_mm = 0.0;            ///< [mm]
    double inner_radius_mm = 0.0;     ///< of the hollow face [mm]
    double outer_radius_mm = 0.0;     ///< of the round face [mm]
    double centroid_radius_mm = 0.0;  ///< of the middle [mm]
    double neutral_radius_mm = 0.0;   ///< where bending leaves no stress [mm]
    double shift_mm = 0.0;            ///< from the middle to there, inward [mm]
};

/// Section of a curved spring: r_n = t/ln(ro/ri), shift = r_c - r_n.
///
/// @param width_mm         [mm], > 0
/// @param thickness_mm     [mm], > 0
/// @param inner_radius_mm  of the hollow face [mm], > 0
/// @throws InvalidInput    with every broken rule
/// @source Winkler-Bach
[[nodiscard]] CurvedSection make_curved_section(double width_mm,
                                                double thickness_mm,
                                                double inner_radius_mm);

/// Stress of both faces, tension positive.
struct CurvedStress {
    double inner_mpa = 0.0;  ///< on the hollow face [MPa]
    double outer_mpa = 0.0;  ///< on the round face [MPa]
};

/// Stress in a curved spring: N/A + M (r_n - r)/(A shift r).
///
/// @param moment_nmm   + straightens: tension on the hollow face [N mm]
/// @param normal_n     through the middle of the section, + pulls [N]
/// @source Winkler-Bach
/// @note   circles about one centre and plane sections; stress across the thickness is left out
[[nodiscard]] CurvedStress curved_stress(const CurvedSection& section,
                                         double moment_nmm,
                                         double normal_n = 0.0);

/// Bending stress of both faces over that of a straight beam.
struct CurvatureFactors {
    double inner = 1.0;  ///< hollow face, above 1
    double outer = 1.0;  ///< round face, below 1
};

/// How much a bend in the spring raises the stress of the hollow face and lowers the round one's.
///
/// @param thickness_mm     [mm], > 0
/// @param inner_radius_mm  [mm], > 0
/// @throws InvalidInput    with every broken rule
/// @source Winkler-Bach
[[nodiscard]] CurvatureFactors curvature_factors(double thickness_mm, double inner_radius_mm);

}  // namespace backspring

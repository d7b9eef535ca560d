#pragma once

namespace backspring {

/// A section of elastic, perfectly plastic steel: rectangle, whole or with a slot where a pin hole
/// passes.
struct PlasticSection {
    double width_mm = 0.0;                ///< across the liners [mm]
    double thickness_mm = 0.0;            ///< in the plane that bends [mm]
    double chord_mm = 0.0;                ///< taken away by the hole [mm]
    double offset_mm = 0.0;               ///< hole's centre from the mid-line, + to the back [mm]
    double youngs_modulus_mpa = 0.0;      ///< Young's modulus [MPa]
    double yield_mpa = 0.0;               ///< stress that goes no higher [MPa]
    double inertia_mm4 = 0.0;             ///< net second moment of area [mm4]
    double outer_mm = 0.0;                ///< centroid to the farther outer fibre [mm]
    double yield_moment_nmm = 0.0;        ///< the outer fibre begins to yield [N mm]
    double plastic_moment_nmm = 0.0;      ///< all of the section yields [N mm]
    double yield_curvature_per_mm = 0.0;  ///< where yielding begins [1/mm]
};

/// Section with what it bears.
///
/// My = sY I / c; Mp = sY b int |y - z| dy, z the line that halves the area: 1.5 My for a whole
/// rectangle.
///
/// @param width_mm            across the liners [mm], > 0
/// @param thickness_mm        [mm], > 0
/// @param youngs_modulus_mpa  [MPa], > 0
/// @param yield_mpa           [MPa], > 0
/// @param chord_mm            taken away by the hole [mm], 0 to less than the thickness
/// @param offset_mm           hole's centre from the mid-line [mm]; the hole lies inside
/// @throws InvalidInput  with every broken rule
/// @source elastic, perfectly plastic bending; plane sections
[[nodiscard]] PlasticSection make_plastic_section(double width_mm,
                                                  double thickness_mm,
                                                  double youngs_modulus_mpa,
                                                  double yield_mpa,
                                                  double chord_mm = 0.0,
                                                  double offset_mm = 0.0);

/// A section under a moment.
struct SectionBend {
    double curvature_per_mm = 0.0;  ///< [1/mm]
    double core_mm = 0.0;           ///< half height of the elastic core [mm]
    double neutral_mm = 0.0;        ///< neutral axis from the mid-line, + towards the back [mm]
};

/// Curvature and elastic core of a section under a moment.
///
/// Whole or with the hole on the mid-line, in closed form: the core's half height y solves
/// y^3 - 3 q h^2 y + 2 a^3 = 0 with q = 1 - M / (sY b h^2), h half the thickness and a half the
/// chord; without a hole y = h sqrt(3 - 2 M/My). k = sY / (E y). With the hole off the mid-line the
/// neutral axis moves, and y and axis are found by search to rounding error.
///
/// @param moment_nmm  [N mm], 0 to less than the plastic moment
/// @throws OutOfRange  a moment the section cannot bear
/// @source elastic, perfectly plastic bending; plane sections
[[nodiscard]] SectionBend bend_section(const PlasticSection& section, double moment_nmm);

/// How fast curvature grows with the moment: 1/(E I) of what is still elastic, about its own
/// centroid.
///
/// @param bend  of the section, from bend_section()
/// @returns     [1/(N mm2)]
/// @source elastic, perfectly plastic bending; plane sections
[[nodiscard]] double curvature_per_nmm2(const PlasticSection& section, const SectionBend& bend);

/// Curvature that stays when the moment has gone: k - M / (E I), 0 up to the yield moment.
///
/// @param moment_nmm  greatest it has borne [N mm]
/// @returns           [1/mm]
/// @throws OutOfRange  a moment the section cannot bear
[[nodiscard]] double residual_curvature_per_mm(const PlasticSection& section, double moment_nmm);

/// Stress that stays when the moment has gone, on the side of the farther outer fibre; + has the
/// sign it had under the moment.
struct ResidualStress {
    double surface_mpa = 0.0;    ///< in the outer fibre: sY - M c/I, against the loading [MPa]
    double core_edge_mpa = 0.0;  ///< at the edge of the elastic core [MPa]
};

/// Stress that stays, 0 up to the yield moment.
///
/// @param moment_nmm  greatest it has borne [N mm]
/// @throws OutOfRange  a moment the section cannot bear
/// @note  it helps: the next bending to the same moment is elastic
[[nodiscard]] ResidualStress residual_stress(const PlasticSection& section, double moment_nmm);

/// Depth from the farther outer fibre to which the section has yielded, 0 up to the yield moment.
///
/// @param moment_nmm  greatest it has borne [N mm]
/// @returns           [mm]
/// @throws OutOfRange  a moment the section cannot bear
[[nodiscard]] double yielded_depth_mm(const PlasticSection& section, double moment_nmm);

}  // namespace backspring

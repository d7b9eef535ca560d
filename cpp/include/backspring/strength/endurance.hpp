#pragma once

#include "backspring/core/band.hpp"

namespace backspring {

/// How the surface was finished, the outer fibre being where cracks begin.
enum class Finish {
    polished,    ///< lengthwise, no scratch across: factor 1
    ground,      ///< as ground
    machined,    ///< milled, or cold drawn
    hot_rolled,  ///< with rolling skin
    as_forged,   ///< with scale
};

/// How a pin hole's wall was finished. No wheel reaches it, so it is seldom as good as the faces.
enum class HoleFinish {
    drilled,   ///< as the drill left it: machined
    reamed,    ///< as smooth as a ground face
    polished,  ///< lapped or burnished, no scratch across
};

/// The finish whose surface factor a hole's wall has.
///
/// @source shigley-9 for drilled, a machined surface; fkm for reamed: at a roughness Rz of 6.3 um
///         and 1460 MPa it leaves 0.85, as much as Shigley's ground surface
[[nodiscard]] Finish wall_finish(HoleFinish finish);

/// What kind of stress turns.
enum class Loading {
    bending,  ///< a leaf spring's
    axial,    ///< pull and push
    torsion,  ///< twist
};

/// Share of the endurance limit that the finish leaves, a Sut^b, at most 1.
///
/// @param tensile_mpa  tensile strength [MPa], > 0
/// @source shigley-9
[[nodiscard]] double surface_factor(Finish finish, double tensile_mpa);

/// Share of the endurance limit that a decarburised skin leaves, however deep it is.
///
/// @source soft-skin-study: 0.5 to 0.6 in quenched and tempered spring steel, the fall sudden with
///         a thin skin and hardly greater with a thick one, for cracks start in it early
/// @note   the cautious end of what was found
inline constexpr double kSoftSkinShare = 0.5;

/// Diameter of the rotating bar that has as much highly stressed metal as a bent strip.
///
/// d_e = 0.808 sqrt(h b).
///
/// @returns  [mm]
/// @source shigley-9
[[nodiscard]] double equivalent_diameter_mm(double width_mm, double thickness_mm);

/// Share of the endurance limit that the size leaves, in bending or torsion, at most 1.
///
/// 1.24 d^-0.107 to 51 mm, 1.51 d^-0.157 beyond.
///
/// @param diameter_mm  of a rotating bar, or equivalent [mm], > 0 to 254
/// @throws OutOfRange  above 254 mm
/// @source shigley-9
/// @note   1 below 2.79 mm, where the source ends: most knife springs
[[nodiscard]] double size_factor(double diameter_mm);

/// Share of the endurance limit in bending that another kind of loading leaves.
///
/// @source shigley-9
[[nodiscard]] double loading_factor(Loading loading);

/// Share of the endurance limit that a temperature leaves.
///
/// @param temperature_c  20 to 538 C; 1 up to 70 F, where the polynomial starts
/// @throws OutOfRange    outside
/// @source shigley-9
[[nodiscard]] double temperature_factor(double temperature_c);

/// Share of the typical endurance limit that a given part of all springs reaches.
///
/// 1 - 0.08 z, z the normal distribution's quantile: a scatter of 8 % is taken.
///
/// @param reliability  part that outlasts it, 0.5 to 0.999999
/// @throws OutOfRange  outside
/// @source shigley-9
[[nodiscard]] double reliability_factor(double reliability);

/// Endurance limit of a polished rotating bar as design takes it: half the tensile strength, at
/// most 700 MPa.
///
/// @param tensile_mpa  [MPa], > 0
/// @returns            [MPa]
/// @source shigley-9
/// @note   from about 42 HRC up more hardness buys yield strength, but no endurance
[[nodiscard]] double design_endurance_mpa(double tensile_mpa);

/// Mean endurance limit of a polished rotating bar and one standard deviation to either side.
///
/// 0.506 Sut with 13.8 % of scatter up to 1460 MPa, 740 MPa with 13.9 % above.
///
/// @param tensile_mpa  [MPa], > 0
/// @returns            [MPa]; two bars of three lie inside
/// @source shigley-9
[[nodiscard]] Band mean_endurance_mpa(double tensile_mpa);

/// What is left of the endurance limit, factor by factor.
struct EnduranceFactors {
    double surface = 1.0;      ///< finish
    double size = 1.0;         ///< section
    double loading = 1.0;      ///< bending
    double temperature = 1.0;  ///< at work
    double reliability = 1.0;  ///< part of all springs that must last

    [[nodiscard]] double product() const {
        return surface * size * loading * temperature * reliability;
    }
};

}  // namespace backspring

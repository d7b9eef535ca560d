#pragma once

#include <optional>
#include <vector>

#include "backspring/action/turns.hpp"
#include "backspring/strength/contact_pressure.hpp"

namespace backspring {

/// What of tang or spring bears at a touch.
enum class Bearer {
    open_front,     ///< front edge of the tang's open face
    open_corner,    ///< corner behind the open face
    round_end,      ///< round end of a tang without half-stop
    closed_corner,  ///< corner behind the closed face
    closed_front,   ///< front edge of the tang's closed face
    kick,           ///< nose of the kick
    flat,           ///< a working face, over a stretch of about half the spring's thickness
    pad_edge,       ///< rear or front edge of the spring's pad
};

/// What bears, and how round it is.
struct Bearing {
    Bearer bearer = Bearer::flat;  ///< which part
    double radius_mm = 0.0;        ///< infinite for a flat, 0 for a sharp edge [mm]
};

/// What bears at a touch of a contact.
///
/// @param touch  one of the contact's own
[[nodiscard]] Bearing bearing_of(const Joint& joint, const Touch& touch);

/// The hardest a part bears over a travel.
struct BearingPressure {
    Bearer bearer = Bearer::flat;     ///< which part
    double radius_mm = 0.0;           ///< infinite for a flat, 0 for a sharp edge [mm]
    double force_n = 0.0;             ///< greatest on it, where it is hardest [N]
    double blade_angle_deg = 0.0;     ///< where that is [deg]
    double station_mm = 0.0;          ///< and on which place of the spring [mm]
    std::optional<LineContact> line;  ///< none for a flat, which spreads it, and for a sharp edge,
                                      ///< which peens or wears until it is round
};

/// How hard each part of the tang, and the pad's edges, bear over a travel.
///
/// Of a part of several radii, as a drawn outline's, that touch counts which presses hardest.
///
/// @param length_mm    width over which spring and tang touch [mm], > 0
/// @param modulus_mpa  contact modulus [MPa], > 0
/// @returns            those that bear at all, in the order of Bearer
/// @source Hertz
/// @note   the spring's own curvature is left out (radius over 100 times the corner's)
[[nodiscard]] std::vector<BearingPressure> bearing_pressures(const Turns& travel,
                                                             double length_mm,
                                                             double modulus_mpa);

/// The one of them with the highest peak; nothing where no round part bears.
[[nodiscard]] std::optional<BearingPressure> worst_bearing_pressure(const Turns& travel,
                                                                    double length_mm,
                                                                    double modulus_mpa);

}  // namespace backspring

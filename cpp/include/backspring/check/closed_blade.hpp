#pragma once

#include <optional>

#include "backspring/action/contact.hpp"
#include "backspring/design/design.hpp"

namespace backspring {

/// How the closed blade lies in the handle; what the design does not tell is none.
struct ClosedBlade {
    std::optional<double> tip_mm;          ///< tip against the handle's rim, + stands out [mm]
    std::optional<double> edge_gap_mm;     ///< least from edge to belly, below 0 they meet [mm]
    std::optional<double> edge_gap_at_mm;  ///< station of that place [mm]
};

/// Where the blade's tip is, fixed to the blade.
///
/// As given, or else the corner of the edge that is farthest ahead, or else at the blade's length
/// on the line through the pivot.
///
/// @returns  nothing where the design tells none of these
[[nodiscard]] std::optional<BladePoint> blade_tip(const Design& design);

/// Height of a place of the blade against where it stands at blade angle 0, + out of the handle.
///
/// u sin(angle) + w (cos(angle) - 1).
///
/// @returns  [mm]
/// @source geometry
[[nodiscard]] double height_in_handle_mm(const BladePoint& point, double blade_angle_deg);

/// Tip and edge of the closed blade against rim and bent spring.
///
/// The well is measured from the line of the spring's free working face, carried on straight. The
/// gap is square to the spring's line, at stations that the spring covers.
///
/// @param joint   with its pins in
/// @param closed  the blade at rest in the handle
/// @note  the small bulge of the spring between its pins is left out (about 0.03 mm)
[[nodiscard]] ClosedBlade closed_blade(const Design& design,
                                       const Joint& joint,
                                       const Contact& closed);

/// Gap between edge and belly at one station, as in closed_blade().
///
/// @returns  [mm], below 0 they meet; nothing where the design gives no edge there
[[nodiscard]] std::optional<double> edge_gap_mm(const Design& design,
                                                const Joint& joint,
                                                const Contact& closed,
                                                double station_mm);

}  // namespace backspring

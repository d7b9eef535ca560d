#pragma once

#include <optional>
#include <vector>

#include "backspring/tang/tang.hpp"

namespace backspring {

/// A place fixed to the blade, from the pivot with the blade open.
struct BladePoint {
    double u_mm = 0.0;  ///< along the spring, + ahead [mm]
    double w_mm = 0.0;  ///< outward; the edge is on the side of the closed face, below 0 [mm]
};

/// The blade as a body that turns; pull and snap need what they name.
struct BladeBody {
    std::optional<double> nail_nick_mm;       ///< pivot to nail nick [mm]
    std::optional<double> inertia_kg_mm2;     ///< about the pivot [kg mm2]
    std::optional<double> mass_g;             ///< [g]
    std::optional<double> length_mm;          ///< tang included [mm]
    std::optional<double> height_mm;          ///< [mm]
    std::optional<double> edge_clearance_mm;  ///< edge to the spring's belly when closed [mm]
    std::vector<BladePoint> edge;             ///< the edge from corner to corner; none: not known
    std::optional<BladePoint> tip;            ///< the blade's tip
    std::optional<double> well_mm;            ///< rim down to the belly's line at the tip [mm]
};

/// Inertia about the pivot: as given, or of a plate of the blade's mass, length and height whose
/// pivot is on its centre line, as far from its end as the tang reaches behind the pivot.
///
/// J = m [(L^2 + h^2)/12 + (L/2 - reach)^2].
///
/// @returns  [kg mm2]; nothing when neither is given
/// @source parallel-axis theorem
[[nodiscard]] std::optional<double> inertia_kg_mm2(const BladeBody& blade, const Tang& tang);

/// Angular speed from energy, omega = sqrt(2 U / J).
///
/// @param energy_mj       [mJ], >= 0
/// @param inertia_kg_mm2  about the pivot [kg mm2], > 0
/// @returns               [rad/s]
/// @source energy of rotation
[[nodiscard]] double angular_speed_rad_per_s(double energy_mj, double inertia_kg_mm2);

}  // namespace backspring

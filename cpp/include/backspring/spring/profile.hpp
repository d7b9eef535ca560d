#pragma once

#include <vector>

namespace backspring {

/// Thickness at one station.
struct Station {
    double x_mm = 0.0;          ///< along the spring from the middle pin, + towards the pivot [mm]
    double thickness_mm = 0.0;  ///< in the plane that bends [mm]
};

/// Thickness along the spring, straight between stations.
///
/// Stations rise; two at the same place make a step.
using Profile = std::vector<Station>;

/// Width at one station.
struct WidthStation {
    double x_mm = 0.0;      ///< along the spring from the middle pin, + towards the pivot [mm]
    double width_mm = 0.0;  ///< across the liners [mm]
};

/// Width along the spring, straight between stations and even beyond them; steps as in a Profile.
using WidthProfile = std::vector<WidthStation>;

/// Width at a station; at a step the one ahead of it, beyond the ends the end's.
///
/// @param profile  at least one station, rising
/// @returns        [mm]
[[nodiscard]] double width_mm(const WidthProfile& profile, double x_mm);

/// Thickness at a station; at a step the one ahead of it, beyond the ends the end's.
///
/// @param profile  at least one station, rising
/// @param x_mm     station [mm]
/// @returns        [mm]
[[nodiscard]] double thickness_mm(const Profile& profile, double x_mm);

}  // namespace backspring

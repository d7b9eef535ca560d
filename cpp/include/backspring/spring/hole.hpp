#pragma once

namespace backspring {

/// A round pin hole across the spring.
struct Hole {
    double center_mm = 0.0;    ///< station of the centre [mm]
    double diameter_mm = 0.0;  ///< [mm]
    double offset_mm = 0.0;    ///< centre from the mid-line, + towards the back [mm]
};

/// Thickness the hole takes away at a station.
///
/// c = 2 sqrt((d/2)^2 - (x - x_h)^2), nothing outside the hole.
///
/// @returns  [mm]
[[nodiscard]] double chord_mm(const Hole& hole, double x_mm);

}  // namespace backspring

#pragma once

#include <vector>

namespace backspring {

/// Height of the spring's mid-line at one station.
struct MidLinePoint {
    double x_mm = 0.0;       ///< along the spring from the middle pin, + towards the pivot [mm]
    double height_mm = 0.0;  ///< above a line along the pad, + towards the back [mm]
};

/// Mid-line of a curved spring, straight between points and level beyond its ends.
///
/// Only differences of height count, so that any line along the pad will do to measure from.
/// Stations rise; two at the same place make a step, as grinding over part of a face does.
using MidLine = std::vector<MidLinePoint>;

/// Height at a station; at a step the one ahead of it.
///
/// @param line  at least one point, rising
/// @returns     [mm]
[[nodiscard]] double height_mm(const MidLine& line, double x_mm);

/// Slope of the mid-line at a station, at a point the one ahead of it; a step has none.
///
/// @returns  tangent of the lean; 0 beyond the ends, and where no line is given
[[nodiscard]] double slope(const MidLine& line, double x_mm);

/// Radius of a stretch of mid-line that is hollow on the belly's side.
struct HollowCurve {
    double x_mm = 0.0;       ///< station of the point it stands at [mm]
    double radius_mm = 0.0;  ///< of the mid-line [mm]
};

/// Points at which the mid-line is arched outward, so that the belly is hollow.
///
/// The radius is that of the circle through a point and its two neighbours. A straight bend needs
/// its own root radius; a curve is the better known the closer its points are.
[[nodiscard]] std::vector<HollowCurve> hollow_curves(const MidLine& line);

}  // namespace backspring

#pragma once

#include <numbers>

namespace backspring {

/// Degrees to radians.
[[nodiscard]] constexpr double radians(double angle_deg) {
    return angle_deg * (std::numbers::pi / 180.0);
}

/// Radians to degrees.
[[nodiscard]] constexpr double degrees(double angle_rad) {
    return angle_rad * (180.0 / std::numbers::pi);
}

}  // namespace backspring

#pragma once

#include <optional>
#include <string>

#include "backspring/check/solution.hpp"

namespace backspring {

/// A spring loaded more on one side than on the other, by blades side by side on one pin.
struct Twist {
    double torque_nmm = 0.0;       ///< of the tangs about the middle of the width [N mm]
    double angle_deg = 0.0;        ///< of the spring at the pivot against the middle pin [deg]
    double across_mm = 0.0;        ///< what the face stands higher on one edge of the width [mm]
    std::string side;              ///< the blade on the pin that is next to that edge
    double blade_angle_deg = 0.0;  ///< of the own blade, where the torque is largest [deg]
    std::string beside;            ///< the others meanwhile, as "pen:open"; joined by "+"
};

/// The largest of the travel; none without a second blade on the own one's pin.
///
/// The blades share the width equally, each bearing on the middle of its share, in the order of the
/// list: the own blade at one edge, which is exact for two and the worst that three can do. T = sum
/// P z, angle = T twist_rad_per_nmm().
///
/// @source timoshenko-goodier, art. 109
/// @note   the bending that all else rests on takes the spring not to twist: the twist says how far
///         that holds
[[nodiscard]] std::optional<Twist> twist(Solution& solution);

}  // namespace backspring

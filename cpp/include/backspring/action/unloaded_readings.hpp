#pragma once

#include "backspring/action/reading.hpp"

namespace backspring {

/// What the dial shows with the rear pin out.
///
/// Where the spring lies on faces of the tang that the blade has turned under it, a straight line
/// through the middle pin as far from the pivot as the face, in closed form; else as readings() of
/// the joint's rests.
///
/// @param unloaded  see make_unloaded_joint()
/// @param tang      the joint's own
[[nodiscard]] Readings unloaded_readings(const Joint& unloaded, const Tang& tang);

/// Where the blade rests with the rear pin out, found in the same way.
[[nodiscard]] Rests unloaded_rests(const Joint& unloaded, const Tang& tang);

}  // namespace backspring

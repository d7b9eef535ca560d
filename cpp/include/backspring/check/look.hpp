#pragma once

#include "backspring/action/sweep.hpp"
#include "backspring/design/design.hpp"

namespace backspring {

/// What a sweep of a design needs, reduced once.
///
/// @throws InvalidInput  with every broken rule
[[nodiscard]] Action make_action(const Design& design);

/// The joint of a design at one blade angle.
///
/// @throws InvalidInput  with every broken rule
/// @throws OutOfRange    for an angle outside the model
[[nodiscard]] Contact contact_at(const Design& design, double blade_angle_deg);

}  // namespace backspring

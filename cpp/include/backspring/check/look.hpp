#pragma once

#include <string>
#include <vector>

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

/// One of several blades on a spring.
struct BladeContact {
    std::string name;       ///< of the blade
    Contact contact;        ///< stations are the blade's own; energy is of the whole spring
    double moved_mm = 0.0;  ///< how far its dial has moved outward from the free shape [mm]
};

/// Every blade of a design held at an angle of its own.
///
/// @param blade_angles_deg  one for each blade, in the design's order [deg]
/// @throws InvalidInput  with every broken rule, or not as many angles as blades
/// @throws OutOfRange    for an angle outside the model
[[nodiscard]] std::vector<BladeContact> contacts_at(const Design& design,
                                                    const std::vector<double>& blade_angles_deg);

}  // namespace backspring

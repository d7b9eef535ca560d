#pragma once

#include <vector>

#include "backspring/action/two_joints.hpp"
#include "backspring/check/columns.hpp"
#include "backspring/design/design.hpp"

namespace backspring {

/// A slip joint with one spring and a blade at each of its ends.
///
/// Two pins hold the spring between the blades, the second one next to the second blade; or a
/// middle pin alone, on which it turns: support `clamped`, for each end then bends as if clamped
/// there. Friction and targets go for both blades.
struct TwoBlades {
    Design first;  ///< the first blade, and the spring over its whole length
    Blade second;  ///< the blade behind the pins
};

/// The second blade as a design of its own, on the spring turned round.
[[nodiscard]] Design second_end(const TwoBlades& two);

/// Every broken rule, by the keys of a design file.
[[nodiscard]] std::vector<Fault> faults(const TwoBlades& two);

/// What contact needs, reduced once.
///
/// @throws InvalidInput  with every broken rule
[[nodiscard]] TwoJoints make_two_joints(const TwoBlades& two);

/// Both tangs at two blade angles.
///
/// @param first_deg, second_deg  blade angles, -45 to 225 [deg]
/// @throws InvalidInput  with every broken rule
/// @throws OutOfRange    for an angle outside the model
[[nodiscard]] TwoContacts two_contacts_at(const TwoBlades& two,
                                          double first_deg,
                                          double second_deg);

/// The whole spring under both tangs, from the second end to the first.
///
/// Stations are the first blade's. The free working face is shown level, so a height is how far
/// the place has moved outward.
///
/// @param spacing_mm  between stations; every kink, step and hole edge is added [mm], > 0
/// @returns           columns of one length
/// @throws InvalidInput  with every broken rule
/// @note  between two pins the small bulge is left out of the deflection
[[nodiscard]] SpringAlong spring_along_two(const TwoBlades& two,
                                           double first_deg,
                                           double second_deg,
                                           double spacing_mm = 0.1);

}  // namespace backspring

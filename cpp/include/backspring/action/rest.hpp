#pragma once

#include <optional>

#include "backspring/action/contact.hpp"

namespace backspring {

// How far a blade may be from square to its closed and half-stop faces and still be at rest there.
inline constexpr double kClosedReachDeg = 30.0;
inline constexpr double kHalfStopReachDeg = 40.0;

/// Where a free blade comes to rest near a nominal angle: the local minimum of strain energy.
///
/// The resultant then passes through the pivot. A blade the spring has let go of stays where it is.
/// Where the nose of a kick has slipped off the pad the blade leans on the pad's end, which takes
/// up the torque that is left: that torque is the pull to start opening.
///
/// @param nominal_deg  where to start: 0 closed, 90 half-stop
/// @param reach_deg    how far to look on either side
/// @returns            nothing when the energy has no minimum within reach
[[nodiscard]] std::optional<Contact> rest_near(const Joint& joint,
                                               double nominal_deg,
                                               double reach_deg);

/// The three positions of a blade.
struct Rests {
    std::optional<Contact> closed;     ///< free to seat, near 0 deg
    std::optional<Contact> half_stop;  ///< free to seat, near 90 deg; only with that face
    Contact open;                      ///< against its stop, 180 deg
};

/// Finds all positions; none is invented where the blade would not stay.
[[nodiscard]] Rests find_rests(const Joint& joint, bool with_half_stop);

}  // namespace backspring

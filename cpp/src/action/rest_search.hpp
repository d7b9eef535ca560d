#pragma once

#include <functional>
#include <optional>

#include "backspring/action/contact.hpp"

namespace backspring::detail {

/// A blade's contact at any angle.
using ContactAt = std::function<Contact(double blade_angle_deg)>;

/// Where two contacts whose torques drive a blade towards each other meet: where the torque
/// vanishes or jumps from closing to opening the blade.
///
/// Where the energy jumps with the torque the tang leans on the pad's end and cannot get on top: it
/// stands on the lower side.
///
/// @param nothing_nmm  a torque no larger than this is none
[[nodiscard]] Contact seat_between(const ContactAt& contact_at,
                                   Contact low,
                                   Contact high,
                                   double nothing_nmm = 0.0);

/// The rest downhill of an angle, by steps as long as the torque says.
///
/// @param contact_at  with a torque of exactly 0 where it is rounding
/// @param standing    reach about its angle
/// @returns           the first contact that has let go, or the rest; nothing within reach
[[nodiscard]] std::optional<Contact> rest_from(const ContactAt& contact_at,
                                               double start_deg,
                                               const Standing& standing);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

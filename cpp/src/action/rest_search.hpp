#pragma once

#include <functional>
#include <optional>

#include "backspring/action/contact.hpp"

namespace backspring::detail {

/// A blade's contact at any angle.
using ContactAt = std::function<Contact(double blade_angle_deg)>;

/// As rest_near(), of a blade that is turned in any manner.
[[nodiscard]] std::optional<Contact> find_rest(const ContactAt& contact_at,
                                               double nominal_deg,
                                               double reach_deg);

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

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

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

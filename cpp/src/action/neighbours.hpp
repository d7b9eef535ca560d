#pragma once

#include "indenters.hpp"

namespace backspring::detail {

/// Adds a touch of an indenter to its own blade's contact.
void add_touch(Contact& contact, const Indenter& indenter, const Touch& touch);

/// As contact_at(), while a stop presses on this end of the spring, or none.
[[nodiscard]] Contact find_contact(const Joint& joint,
                                   double blade_angle_deg,
                                   const Pushed* pushed);

/// The same of a blade that is not alone on its spring.
[[nodiscard]] Contact contact_with_others(const Joint& joint,
                                          double blade_angle_deg,
                                          const Pushed* pushed);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include "indenters.hpp"

namespace backspring::detail {

/// Adds a touch of an indenter to its own blade's contact.
void add_touch(Contact& contact, const Indenter& indenter, const Touch& touch);

/// As contact_at(), of a blade that is not alone on its spring.
[[nodiscard]] Contact contact_with_others(const Joint& joint, double blade_angle_deg);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

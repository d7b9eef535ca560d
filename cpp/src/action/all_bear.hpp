#pragma once

#include <optional>
#include <span>

#include "coupled_ends.hpp"

namespace backspring::detail {

/// A contact of several blades where the same parts of them bear as at angles near by: places, the
/// turns of both roots and the angles of those free to seat are moved together, by Newton's method.
/// Nothing where that does not tell it, or where others bear besides.
///
/// @param near  contacts of this joint that bear alike, the nearest first; at least one
[[nodiscard]] std::optional<Contact> all_bear_as(const Joint& joint,
                                                 double blade_angle_deg,
                                                 std::span<const Contact* const> near);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

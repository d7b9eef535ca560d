#pragma once

#include <optional>
#include <vector>

#include "coupled_ends.hpp"

namespace backspring::detail {

/// How all blades of a joint stand, and what bears.
struct AllBear {
    std::vector<double> angles_deg;  ///< the own blade's first
    Balance balance;
};

/// How all blades of a joint stand as the own one is turned, where the same parts of them bear as
/// at an angle near by: places, the turns of both roots and the angles of those free to seat are
/// moved together, by Newton's method. Nothing where that does not tell it.
///
/// @param near  a contact of this joint; about what bears
[[nodiscard]] std::optional<AllBear> all_bear_as(const Joint& joint,
                                                 double blade_angle_deg,
                                                 const Contact& near);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include "indenters.hpp"

namespace backspring::detail {

/// Moves a touch along its outline, no farther than to where its part of that ends, or its pad.
///
/// @param by     change of slope on an arc, of station on a flat [mm]
/// @param touch  on the indenter's outline; what ends on one part goes on with the next
/// @returns      false where the outline does not reach the edge of the pad that it comes to
bool go_along(const Indenter& indenter, double by, Touch& touch);

/// About where an outline bears that bore before it was turned a little: at the slope that it had
/// on an arc, as far along a flat. Nothing where its part does not reach there any more.
[[nodiscard]] std::optional<Touch> turned_along(const Indenter& indenter, const Touch& before);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

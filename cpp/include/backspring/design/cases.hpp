#pragma once

#include <vector>

#include "backspring/design/design.hpp"

namespace backspring {

/// The positions that a blade has: closed, half-stop where there is that face, open.
[[nodiscard]] std::vector<Stand> stands_of(const Tang& tang);

/// The design's own blade with the others in each of their positions, all of them closed first.
///
/// A blade alone on its spring has one case: the design itself.
[[nodiscard]] std::vector<Design> cases(const Design& design);

/// Every case of every blade, the blades in the design's order.
[[nodiscard]] std::vector<Design> all_cases(const Design& design);

}  // namespace backspring

#pragma once

#include <optional>
#include <vector>

#include "backspring/design/design.hpp"
#include "backspring/strength/bearing_pressure.hpp"
#include "backspring/strength/plastic_set.hpp"

namespace backspring {

/// The permanent set that opening a knife of this design leaves: plastic_set() over its travel,
/// by the own blade with the others where they make it largest.
///
/// @param yield_mpa  none: the likely yield stress of the design's steel [MPa], > 0
/// @throws InvalidInput  with every broken rule
[[nodiscard]] PlasticSet permanent_set(const Design& design, std::optional<double> yield_mpa = {});

/// How hard each part of the tang, and the pad's edges, bear over the travel, tang and spring of
/// the same steel; blades on one pin share the width equally.
///
/// @throws InvalidInput  with every broken rule
/// @source Hertz
[[nodiscard]] std::vector<BearingPressure> bearing_pressures(const Design& design);

}  // namespace backspring

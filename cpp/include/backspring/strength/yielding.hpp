#pragma once

#include <optional>

#include "backspring/core/band.hpp"

namespace backspring {

/// Yield margin, yield stress over peak stress, with the band the yield stress brings.
///
/// Below 1 the outer fibre yields and the spring takes a set.
///
/// @param yield_mpa   0.2 % proof stress with its band [MPa]
/// @param stress_mpa  peak stress [MPa], >= 0
/// @returns           nothing for a spring without stress
/// @note              0.2 % proof is not "no set": set begins at the elastic limit, which is lower
[[nodiscard]] std::optional<Band> yield_margin(const Band& yield_mpa, double stress_mpa);

}  // namespace backspring

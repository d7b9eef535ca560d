#pragma once

#include <vector>

#include "backspring/fit/least_squares.hpp"

namespace backspring::detail {

/// Throws InvalidInput with everything that makes no sense.
void require_sense(const std::vector<Unknown>& unknowns, const LeastSquaresRules& given);

}  // namespace backspring::detail

#pragma once

#include <string>
#include <vector>

#include "backspring/tolerance/spread.hpp"

namespace backspring {

/// How one result follows small departures, and what that says of large ones.
struct LocalSpread {
    std::string name;                 ///< of the result
    double nominal = 0.0;             ///< of the design as it is
    std::vector<double> slopes;       ///< change of the result per unit of each dimension
    double root_sum_square_sd = 0.0;  ///< sqrt of the sum of (slope x standard deviation)^2
    double worst_low = 0.0;           ///< every dimension at the end that lowers the result
    double worst_high = 0.0;          ///< every dimension at the end that raises it
};

/// Root-sum-square and worst case of each result.
///
/// Slopes are central differences over a hundredth of each tolerance. The worst case is checked
/// with every dimension at that end of its tolerance which its slope says, see farthest().
///
/// @param columns  results, see batch_columns()
/// @returns        as asked for; NaN where the design has no such result
/// @throws InvalidInput  see require_spreads() and check_many()
[[nodiscard]] std::vector<LocalSpread> local_spreads(const Design& design,
                                                     const std::vector<Spread>& spreads,
                                                     const std::vector<std::string>& columns);

}  // namespace backspring

#pragma once

#include <string>
#include <vector>

#include "backspring/tolerance/spread.hpp"

namespace backspring {

/// One stroke's part in a result that the strokes compete for.
struct StrokeSpread {
    std::string name;                 ///< of the stroke's own result, see batch_columns()
    double nominal = 0.0;             ///< of the design as it is
    std::vector<double> slopes;       ///< change per unit of each dimension
    double root_sum_square_sd = 0.0;  ///< of the stroke's own result
};

/// How one result follows small departures, and what that says of large ones.
struct LocalSpread {
    std::string name;                   ///< of the result
    double nominal = 0.0;               ///< of the design as it is
    std::vector<double> slopes;         ///< change of the result per unit of each dimension
    double root_sum_square_sd = 0.0;    ///< sqrt of the sum of (slope x standard deviation)^2
    double worst_low = 0.0;             ///< every dimension at the end that lowers the result
    double worst_high = 0.0;            ///< every dimension at the end that raises it
    std::vector<StrokeSpread> strokes;  ///< that compete for it; none where one alone makes it
};

/// Root-sum-square and worst case of each result.
///
/// Slopes are central differences over a hundredth of each tolerance. The worst case is checked
/// with every dimension at that end of its tolerance which its slope says, see farthest().
///
/// Peak pull, torque, stress and yield margin are those of the worse stroke. Where tolerances can
/// make the other the worse one, each stroke has slopes of its own: the worst cases are the
/// farthest of those that the slopes of either, and of both in equal parts, lead to; the
/// root-sum-square is the larger one where three standard deviations of the gap between them close
/// it, and the slopes are those of the stroke that counts in the design as it is.
///
/// @param columns  results, see batch_columns()
/// @returns        as asked for; NaN where the design has no such result
/// @throws InvalidInput  see require_spreads() and check_many()
[[nodiscard]] std::vector<LocalSpread> local_spreads(const Design& design,
                                                     const std::vector<Spread>& spreads,
                                                     const std::vector<std::string>& columns);

}  // namespace backspring

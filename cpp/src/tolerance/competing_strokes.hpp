#pragma once

#include "backspring/tolerance/local_spread.hpp"

namespace backspring::detail {

/// The columns of the single strokes that a result is the worst of; none for other results.
[[nodiscard]] std::vector<std::string> columns_of_strokes(const std::string& column);

/// A result from what it is about the design and what its strokes are.
///
/// Strokes compete where tolerances can close the gap between them.
[[nodiscard]] LocalSpread put_together(const StrokeSpread& whole,
                                       std::vector<StrokeSpread> strokes,
                                       const std::vector<Spread>& spreads);

/// The slopes that lead to worst cases: of each stroke that competes, and of both in equal parts.
[[nodiscard]] std::vector<std::vector<double>> directions_of(const LocalSpread& local);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

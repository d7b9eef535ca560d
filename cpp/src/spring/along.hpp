#pragma once

#include <algorithm>
#include <span>

namespace backspring::detail {

/// A number read off rows that rise by station: straight between them, the end's beyond the ends,
/// at a step the one ahead of it.
///
/// @param rows  at least one
template <class Row>
[[nodiscard]] double along(std::span<const Row> rows, double Row::*number, double x_mm) {
    const auto ahead = std::upper_bound(rows.begin(), rows.end(), x_mm,
                                        [](double x, const Row& row) { return x < row.x_mm; });
    if (ahead == rows.begin()) return rows.front().*number;
    if (ahead == rows.end()) return rows.back().*number;
    const Row& a = *(ahead - 1);
    const Row& b = *ahead;
    const double share = (x_mm - a.x_mm) / (b.x_mm - a.x_mm);
    return a.*number + share * (b.*number - a.*number);
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "backspring/check/bounds.hpp"
#include "backspring/check/case_solutions.hpp"
#include "backspring/many/batch.hpp"

namespace backspring::detail {

// Only for who asks by name: a blade alone has one pull, and reads nothing at open.
inline constexpr std::string_view kEdgeGap = "edge_gap_left_mm";
inline constexpr std::string_view kLeastPull = "peak_pull_least_n";
inline constexpr std::string_view kOpenReading = "reading_loaded_open_mm";

/// One result of a row by its name, and how a design's solutions are asked for it.
struct RowColumn {
    std::string_view name;
    ResultKind kind;
    std::optional<double> (*of)(CaseSolutions& cases);
};

[[nodiscard]] std::span<const RowColumn> row_columns();

/// Works a row out as far as its columns ask for it.
///
/// @param values  one for each column; NaN where the row has none, all NaN with a result that is
///                impossible
[[nodiscard]] RowStatus work_row(const Design& design,
                                 std::span<const RowColumn> columns,
                                 std::span<double> values);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

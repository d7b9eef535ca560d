#pragma once

#include <functional>
#include <vector>

#include "backspring/design/field.hpp"
#include "backspring/sensitivity/gradient.hpp"
#include "worst_figures.hpp"

namespace backspring::detail {

// How far whole solutions are differenced, as a share of the number, or in its unit below 1.
inline constexpr double kStepBeside = 2e-5;

/// A column of the gradient: each result at once, and to either side.
struct ColumnRates {
    Eigen::ArrayXd joined, below, above;
};

/// Both sides, joined where they agree.
[[nodiscard]] ColumnRates joined_rates(const ColumnSides& sides,
                                       const Eigen::ArrayXd& values,
                                       double step);

/// A design with a number off by so much.
using Changed = std::function<Design(double by)>;

/// Corners by themselves: a design file gives them as a pair.
[[nodiscard]] const std::vector<Field>& corner_fields();

/// Puts columns into a gradient that has its values.
void set_columns(Gradient& result, const std::vector<ColumnRates>& columns);

/// Of a blade alone: derivatives, not differences of solutions.
[[nodiscard]] Gradient exact_gradient(const Design& design);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

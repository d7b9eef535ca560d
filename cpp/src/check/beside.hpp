#pragma once

#include <vector>

#include "backspring/check/check.hpp"
#include "backspring/check/solution.hpp"

namespace backspring::detail {

/// The row of one case: what its check says that differs from case to case.
///
/// @param check  gets a notice for every other blade that the spring leaves loose meanwhile
[[nodiscard]] Beside beside(Solution& solution, Check& check);

/// The first of several cases with the rows of all; verdict, targets and notices are the worst.
///
/// @param checks  of one blade, each with its own row, all others closed first
[[nodiscard]] Check worst_of_cases(std::vector<Check> checks);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

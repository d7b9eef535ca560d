#pragma once

#include <vector>

#include "backspring/check/whole_back.hpp"
#include "backspring/core/function_ref.hpp"

namespace backspring::detail {

/// A station of the back and a value there.
struct BackPlace {
    double x_mm;
    double value;
};

/// Stations between which the back of two contacts is smooth: `from`, their touches, the end.
[[nodiscard]] std::vector<double> smooth_stretches(const Joint& joint,
                                                   const Contact& open,
                                                   const Contact& position,
                                                   double from_mm);

/// Where a value, smooth between stations, is greatest.
[[nodiscard]] BackPlace greatest_along(FunctionRef value, const std::vector<double>& stations);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

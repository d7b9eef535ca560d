#pragma once

#include <string>
#include <string_view>

#include "backspring/core/error.hpp"
#include "backspring/core/require.hpp"

namespace backspring::detail {

// Units in which published fits were made.
inline constexpr double kMpaPerKpsi = 6.894757293168361;

/// A ratio of two lengths that stands at a bound may lie beyond it by rounding.
inline constexpr double kRatioRounding = 1e-9;

/// Refuses what lies outside the range a formula was checked in; not-a-number too.
inline void require_within(std::string_view name, double value, double low, double high) {
    if (value >= low - kRatioRounding && value <= high + kRatioRounding) return;
    throw OutOfRange(std::string(name) + ": must be from " + with_unit(low, "") + " to " +
                     with_unit(high, "") + ", got " + with_unit(value, ""));
}

/// The same where there is no upper end.
inline void require_at_least(std::string_view name, double value, double low) {
    if (value >= low - kRatioRounding) return;
    throw OutOfRange(std::string(name) + ": must be at least " + with_unit(low, "") + ", got " +
                     with_unit(value, ""));
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

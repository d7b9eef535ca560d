#pragma once

#include <vector>

#include "backspring/action/rest.hpp"
#include "backspring/check/check.hpp"

namespace backspring::detail {

/// The beam's slopes are taken as small; error grows as slope^2.
inline constexpr double kSmallSlope = 0.1;

/// What a maker should know about a checked design beyond its numbers.
[[nodiscard]] std::vector<Notice> find_notices(const Design& design,
                                               const Joint& joint,
                                               const Rests& rests,
                                               const Check& check);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include <vector>

#include "backspring/check/verdict.hpp"

namespace backspring::detail {

/// What the surface does that no margin tells: kinks of the belly without a stated root radius, and
/// what a soft skin takes from the section.
[[nodiscard]] std::vector<Notice> surface_notices(const Design& design, const Worked& worked);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

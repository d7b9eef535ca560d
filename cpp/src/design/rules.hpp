#pragma once

#include <string>

#include "backspring/core/require.hpp"
#include "backspring/design/design.hpp"

namespace backspring::detail {

inline std::string mm(double value) { return with_unit(value, Quantity::length); }

/// Rules of the spring, of a pad on it and of the strength of its steel, beyond the range of each
/// number.
void spring_rules(Requirements& rules,
                  const Spring& spring,
                  const Pad& pad,
                  const Strength& strength);

/// Rules of the tang on a spring with the given pad, beyond the range of each number.
void tang_rules(Requirements& rules, const Tang& tang, const Pad& pad);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

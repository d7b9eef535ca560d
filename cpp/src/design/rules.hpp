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

/// Rules of the spring's surface, beyond the range of each number.
void surface_rules(Requirements& rules, const Design& design);

/// Rules of liners, scales and a measured seat, beyond the range of each number.
void frame_rules(Requirements& rules, const Design& design);

/// Rules between the blades of one spring.
void blade_rules(Requirements& rules, const Design& design);

/// Key of the design file for a fault of a blade that is not the first, seen from that blade; empty
/// where the first one's faults have it.
[[nodiscard]] std::string key_of_blade(const std::string& key, const Blade& blade);

/// Rules of the tang on a spring with the given pad, beyond the range of each number.
void tang_rules(Requirements& rules, const Tang& tang, const Pad& pad);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

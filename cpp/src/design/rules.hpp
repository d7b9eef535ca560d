#pragma once

#include "backspring/core/require.hpp"
#include "backspring/design/design.hpp"

namespace backspring {

// Far beyond any folding knife; what lies outside is a slip of the pen or of units.
inline constexpr double kLongestMm = 500.0;
inline constexpr double kThickestMm = 50.0;

inline std::string mm(double value) { return with_unit(value, "mm"); }

/// Rules of the spring and of the strength of its steel.
void spring_rules(Requirements& rules, const Spring& spring, const Strength& strength);

/// Rules of the tang on a spring with the given pad; whether all of them hold.
[[nodiscard]] bool tang_rules(Requirements& rules, const Tang& tang, const Pad& pad);

}  // namespace backspring

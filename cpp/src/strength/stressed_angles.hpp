#pragma once

#include <optional>
#include <vector>

#include "backspring/action/turns.hpp"

namespace backspring::detail {

/// Stress at an angle if nothing yielded.
struct StressedAngle {
    double stress_mpa;
    double blade_angle_deg;
    std::optional<Contact> contact;  ///< there; none for a peak
};

/// Angles at which an elastic spring would be stressed beyond a stress: the peaks of the travel, in
/// their order, then others a degree apart at most.
[[nodiscard]] std::vector<StressedAngle> stressed_angles(const Turns& travel, double stress_mpa);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

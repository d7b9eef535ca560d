#pragma once

#include <span>
#include <vector>

#include "backspring/action/sweep.hpp"

namespace backspring::detail {

inline double angle_of(const Step& step) { return step.turn.contact.blade_angle_deg; }

/// Stress at an angle if nothing yielded.
struct StressedAngle {
    double stress_mpa;
    double blade_angle_deg;
    const Step* step;  ///< of the sweep; none for a peak between steps
};

/// Angles at which an elastic spring would be stressed beyond a stress: the peaks of the travel,
/// between steps too, in their order, then the other steps.
[[nodiscard]] std::vector<StressedAngle> stressed_angles(const Action& action,
                                                         std::span<const Step> steps,
                                                         double stress_mpa);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

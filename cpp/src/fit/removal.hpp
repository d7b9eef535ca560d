#pragma once

#include "backspring/fit/fit_plan.hpp"
#include "face_solver.hpp"

namespace backspring::detail {

/// What planning needs to know throughout.
struct PlanSubject {
    const Design& now;
    FitState state;
    const PlanRules& rules;
    const FitUnknowns& unknowns;
    double aim_mm;    ///< loaded reading to end at
    double slack_mm;  ///< how far below the target a reading counts as met
    double near_mm;   ///< how far above the aim it counts as met
};

/// The least that has to come off each face, all passes together.
///
/// @throws NoConvergence  a face's steel runs out
[[nodiscard]] FaceDepths least_removal(const PlanSubject& subject);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

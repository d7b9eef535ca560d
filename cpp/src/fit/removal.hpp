#pragma once

#include <vector>

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

/// Steel that may come off a face when others have lost theirs: the closed face beside it lends
/// the kick its height.
[[nodiscard]] double left_mm(const PlanSubject& s, TangFace face, const FaceDepths& with = {});

/// What comes off with some taken already: nothing is put on, whatever runs out gives way.
///
/// @param ways  along which the closed reading is brought down, the first choice first
[[nodiscard]] FaceDepths with_ways(const PlanSubject& s,
                                   FaceDepths already,
                                   const std::vector<Direction>& ways);

/// Whether a reading ends below the target by more than matters.
[[nodiscard]] bool ends_low(const PlanSubject& s, const FaceDepths& depths);

/// The depth off the open face at which no reading is low any more.
///
/// @throws NoConvergence  the open face's steel runs out
[[nodiscard]] double open_depth_mm(const PlanSubject& s, const Direction& closed);

/// @throws NoConvergence  a face would lose more than it may
void require_steel(const PlanSubject& subject, const FaceDepths& depths);

/// What comes off for the readings along some ways, the open face for one that is low.
///
/// @throws NoConvergence  a face's steel runs out
[[nodiscard]] FaceDepths removal_along(const PlanSubject& subject,
                                       const std::vector<Direction>& ways);

/// The least that has to come off each face for the readings, all passes together.
///
/// @throws NoConvergence  a face's steel runs out
[[nodiscard]] FaceDepths least_removal(const PlanSubject& subject);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

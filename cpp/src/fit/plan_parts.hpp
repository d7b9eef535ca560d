#pragma once

#include "backspring/core/require.hpp"
#include "tip_removal.hpp"

namespace backspring::detail {

// A face with no more to go is taken to the aim in one pass.
inline constexpr double kThouMm = 0.0254;
inline constexpr double kHairMm = 0.001;

/// Broken rules of how to plan for a design's own blade.
void plan_rules(Requirements& rules, const Design& design, const PlanRules& given);

/// How far below the target a reading counts as met [mm].
[[nodiscard]] double slack_mm(const PlanRules& rules);

/// A blade as it stands, with aim and tolerances from the rules.
[[nodiscard]] PlanSubject subject_of(const Design& now,
                                     FitState state,
                                     const PlanRules& rules,
                                     const FitUnknowns& unknowns);

/// What comes off the own blade in all, readings and tip together.
[[nodiscard]] TipRemoval wanted_removal(const PlanSubject& s);

/// What a plan that keeps the tip level takes off; nothing where there is none.
[[nodiscard]] std::optional<FaceDepths> level_removal(const PlanSubject& s);

/// What is expected after some depths are off.
[[nodiscard]] FitStep describe(const PlanSubject& s, const FaceDepths& depths, double start_tip_mm);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

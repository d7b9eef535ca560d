#pragma once

#include "backspring/fit/fit_plan.hpp"

namespace backspring::detail {

/// Whether the tip ends farther from where it is than the allowance.
[[nodiscard]] bool moves_tip(const FitPlan& plan, const PlanRules& rules);

/// What a maker should know before carrying a plan out.
[[nodiscard]] std::vector<Notice> plan_notices(const FitPlan& plan, const PlanRules& rules);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include "backspring/shop/fit_plan.hpp"

namespace backspring {

/// What a maker should know before carrying a plan out.
[[nodiscard]] std::vector<Notice> plan_notices(const FitPlan& plan, const PlanRules& rules);

}  // namespace backspring

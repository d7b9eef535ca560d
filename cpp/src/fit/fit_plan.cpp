#include "backspring/fit/fit_plan.hpp"

#include "backspring/fit/blades_plan.hpp"

namespace backspring {

FitPlan fit_plan(const Design& now,
                 FitState state,
                 const PlanRules& rules,
                 const FitUnknowns& unknowns) {
    return fit_plan(now, {{.blade = 0, .unknowns = unknowns}}, state, rules).blades.front();
}

FitPlan fit_plan(const Design& design,
                 const Measured& measured,
                 const PlanRules& rules,
                 const FitUnknowns& unknowns) {
    return fit_plan(as_measured(design, measured, unknowns), measured.state, rules, unknowns);
}

}  // namespace backspring

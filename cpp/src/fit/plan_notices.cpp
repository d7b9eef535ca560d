#include "plan_notices.hpp"

#include <algorithm>

namespace backspring {
namespace {

std::optional<double> peak_torque_nmm(const Design& design) {
    const Check result = check(design);
    std::optional<double> peak;
    for (const StrokeReport& each : result.strokes) {
        peak = std::max(peak.value_or(0.0), each.stroke.peak_torque_nmm);
    }
    return peak;
}

/// What lowering the open face does to the whole.
Notice lowering_open(const FitPlan& plan) {
    Notice notice{.code = NoticeCode::lowers_open,
                  .parameters = {{"off", plan.removed.open_mm, Quantity::length},
                                 {"preload_before", plan.now.fit.preload_mm, Quantity::length},
                                 {"preload_after", plan.done.fit.preload_mm, Quantity::length}}};
    const auto had = peak_torque_nmm(plan.now), left = peak_torque_nmm(plan.done);
    if (had && left) {
        notice.parameters.push_back({"pull_change", *left / *had - 1.0, Quantity::ratio});
    }
    if (const auto& tip = plan.steps.back().tip_mm) {
        notice.parameters.push_back({"tip", *tip, Quantity::length});
    }
    return notice;
}

}  // namespace

std::vector<Notice> detail::plan_notices(const FitPlan& plan, const PlanRules& rules) {
    std::vector<Notice> notices;
    if (plan.steps.empty()) notices.push_back({.code = NoticeCode::fit_done});
    if (plan.removed.open_mm > 0.0) notices.push_back(lowering_open(plan));
    if (rules.repeatability_mm > 0.0) {
        notices.push_back(
            {.code = NoticeCode::no_finer,
             .parameters = {{"repeatability", rules.repeatability_mm, Quantity::length}}});
    }
    const auto low = [&](const std::optional<double>& reading) {
        return reading && *reading < rules.target_mm;
    };
    if (plan.removed.open_mm == 0.0 &&
        (low(plan.half_stop_loaded_mm) || low(plan.closed_loaded_mm))) {
        notices.push_back({.code = NoticeCode::slightly_low});
    }
    return notices;
}

}  // namespace backspring

#include "plan_notices.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "backspring/core/require.hpp"

namespace backspring {
namespace {

/// A length rounded as a bench can tell it.
std::string mm(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.3f mm", value);
    return text;
}

std::optional<double> peak_torque_nmm(const Design& design) {
    const Check result = check(design);
    std::optional<double> peak;
    for (const StrokeReport& each : result.strokes) {
        peak = std::max(peak.value_or(0.0), each.stroke.peak_torque_nmm);
    }
    return peak;
}

/// What lowering the open face does to the whole.
std::string lowering_open(const FitPlan& plan) {
    const double before = plan.now.fit.preload_mm, after = plan.done.fit.preload_mm;
    std::string text = "a reading is low: only the open face can be lowered, by " +
                       mm(plan.removed.open_mm) + " in all; preload falls from " + mm(before) +
                       " to " + mm(after);
    const auto had = peak_torque_nmm(plan.now), left = peak_torque_nmm(plan.done);
    if (had && left) {
        char share[32];
        std::snprintf(share, sizeof share, "%.1f", 100.0 * (*left / *had - 1.0));
        text += std::string(", pull by ") + share + " %";
    }
    if (const auto& tip = plan.steps.back().tip_mm) {
        text += ", the tip ends " + mm(std::abs(*tip)) + (*tip < 0.0 ? " deeper" : " higher");
    }
    return text + "; the blade then opens a little further, and the pad must lie flat on it again";
}

}  // namespace

std::vector<Notice> plan_notices(const FitPlan& plan, const PlanRules& rules) {
    std::vector<Notice> notices;
    if (plan.steps.empty()) {
        notices.push_back({"fit-done", "nothing to grind: both readings are as wanted"});
    }
    if (plan.removed.open_mm > 0.0) notices.push_back({"lowers-open", lowering_open(plan)});
    if (rules.repeatability_mm > 0.0) {
        notices.push_back({"no-finer", "readings repeat to " + mm(rules.repeatability_mm) +
                                           ": nothing is planned finer than that, so measure "
                                           "again after every pass"});
    }
    const auto low = [&](const std::optional<double>& reading) {
        return reading && *reading < rules.target_mm;
    };
    if (plan.removed.open_mm == 0.0 &&
        (low(plan.half_stop_loaded_mm) || low(plan.closed_loaded_mm))) {
        notices.push_back({"slightly-low",
                           "a reading is below the target by less than can be told or matters: "
                           "leave it"});
    }
    return notices;
}

}  // namespace backspring

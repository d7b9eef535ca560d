#include "plan_notices.hpp"

#include <algorithm>
#include <cmath>

#include "plan_parts.hpp"

namespace backspring {
namespace {

// What two readings of a caliper on a tip may differ by.
constexpr double kTipNearMm = 0.02;

std::optional<double> peak_torque_nmm(const Design& design) {
    const Check result = check(design);
    std::optional<double> peak;
    for (const StrokeReport& each : result.strokes) {
        peak = std::max(peak.value_or(0.0), each.stroke.peak_torque_nmm);
    }
    return peak;
}

bool is_low(const std::optional<double>& reading, const PlanRules& rules) {
    return reading && *reading < rules.target_mm;
}

bool starts_low(const FitPlan& plan, const PlanRules& rules) {
    return is_low(plan.half_stop_loaded_mm, rules) || is_low(plan.closed_loaded_mm, rules);
}

/// What no plan mends: less than matters, or more than that of a reading that is proud, whose open
/// face is spared.
Notice left_low(const FitPlan& plan, const PlanRules& rules) {
    PlanRules unspared = rules;
    unspared.spares_open = false;
    const double closed = plan.closed_loaded_mm;
    const double lowest = std::min(closed, plan.half_stop_loaded_mm.value_or(closed));
    if (rules.target_mm - lowest <= slack_mm(unspared)) return {.code = NoticeCode::slightly_low};
    return {.code = NoticeCode::short_of_target,
            .parameters = {{"reading", lowest, Quantity::length}}};
}

/// What lowering the open face does to the whole.
Notice lowering_open(const FitPlan& plan, const PlanRules& rules) {
    Notice notice{
        .code = NoticeCode::lowers_open,
        .parameters = {{"off", plan.removed.open_mm, Quantity::length},
                       {"preload_before", plan.now.own().fit.preload_mm, Quantity::length},
                       {"preload_after", plan.done.own().fit.preload_mm, Quantity::length}}};
    if (!starts_low(plan, rules)) notice.names = {{"for", "tip"}};
    const auto had = peak_torque_nmm(plan.now), left = peak_torque_nmm(plan.done);
    if (had && left) {
        notice.parameters.push_back({"pull_change", *left / *had - 1.0, Quantity::ratio});
    }
    if (const auto& tip = plan.steps.back().tip_mm) {
        notice.parameters.push_back({"tip", *tip, Quantity::length});
    }
    return notice;
}

Notice moving_tip(const FitPlan& plan, const PlanRules& rules) {
    Notice notice{.code = NoticeCode::moves_tip,
                  .parameters = {{"tip", *plan.tip_mm, Quantity::length},
                                 {"allowance", rules.tip_allowance_mm, Quantity::length}}};
    if (rules.tip_mm) notice.names = {{"because", "asked"}};
    if (!plan.now.own().tang.kick) notice.names = {{"because", "no-kick"}};
    if (const auto& level = plan.level_removed) {
        notice.parameters.push_back({"level_closed", level->closed_mm, Quantity::length});
        notice.parameters.push_back({"level_kick", level->kick_mm, Quantity::length});
    }
    return notice;
}

/// Where the tip is not as it was asked for, which face is the reason; or there is no kick.
void tip_notices(std::vector<Notice>& notices, const FitPlan& plan, const PlanRules& rules) {
    if (!plan.tip_mm) return;
    if (moves_tip(plan, rules)) notices.push_back(moving_tip(plan, rules));
    const double wanted = rules.tip_mm.value_or(0.0);
    const bool asked = rules.tip_mm || plan.tip_runs_out;
    if (!asked || std::abs(*plan.tip_mm - wanted) <= kTipNearMm) return;
    Notice notice{.code = NoticeCode::tip_follows,
                  .parameters = {{"wanted", wanted, Quantity::length},
                                 {"tip", *plan.tip_mm, Quantity::length}}};
    if (plan.tip_runs_out) {
        notice.code = NoticeCode::tip_runs_out;
        notice.names = {{"face", name_of(*plan.tip_runs_out)}};
    }
    notices.push_back(std::move(notice));
}

}  // namespace

bool detail::moves_tip(const FitPlan& plan, const PlanRules& rules) {
    return plan.tip_mm && std::abs(*plan.tip_mm) > rules.tip_allowance_mm;
}

std::vector<Notice> detail::plan_notices(const FitPlan& plan, const PlanRules& rules) {
    std::vector<Notice> notices;
    tip_notices(notices, plan, rules);
    if (plan.steps.empty()) notices.push_back({.code = NoticeCode::fit_done});
    if (plan.removed.open_mm > 0.0) notices.push_back(lowering_open(plan, rules));
    if (rules.repeatability_mm > 0.0) {
        notices.push_back(
            {.code = NoticeCode::no_finer,
             .parameters = {{"repeatability", rules.repeatability_mm, Quantity::length}}});
    }
    if (plan.removed.open_mm == 0.0 && starts_low(plan, rules)) {
        notices.push_back(left_low(plan, rules));
    }
    return notices;
}

}  // namespace backspring

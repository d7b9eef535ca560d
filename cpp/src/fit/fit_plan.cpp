#include "backspring/fit/fit_plan.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "backspring/core/require.hpp"
#include "plan_notices.hpp"
#include "tip_removal.hpp"

namespace backspring {
namespace {

constexpr std::array<TangFace, 4> kOrder{TangFace::open, TangFace::half_stop, TangFace::closed,
                                         TangFace::kick};
constexpr double kThouMm = 0.0254;
constexpr double kHairMm = 0.001;
constexpr double kLargestReadingMm = 3.0;
constexpr int kMostPasses = 60;

void tip_rules(Requirements& rules, const Design& design, const PlanRules& given) {
    rules.in_range("tip_allowance", given.tip_allowance_mm, 0.0, 50.0, "mm");
    if (!given.tip_mm) return;
    rules.in_range("tip", *given.tip_mm, -20.0, 20.0, "mm");
    // A blade that keeps its angle keeps its tip, wherever that is.
    rules.require(*given.tip_mm == 0.0 || blade_tip(design).has_value(), "tip", [] {
        return std::string("needs to know where the tip is: give blade.tip, edge or length");
    });
    rules.require(given.closed_by == ClosedGrind::level, "tip", [] {
        return std::string("says where the closed reading is brought down: leave out closed_by");
    });
}

void plan_rules(Requirements& rules, const PlanRules& given) {
    rules.in_range("target", given.target_mm, -1.0, 1.0, "mm");
    rules.in_range("repeatability", given.repeatability_mm, 0.0, 0.2, "mm");
    rules.in_range("reserve", given.reserve, 0.0, 0.8, "");
    const auto material = [&](const char* key, const std::optional<double>& mm) {
        if (mm) rules.in_range(key, *mm, 0.0, 50.0, "mm");
    };
    material("material.open", given.material.open_mm);
    material("material.half_stop", given.material.half_stop_mm);
    material("material.closed", given.material.closed_mm);
    material("material.kick", given.material.kick_mm);
}

void measured_rules(Requirements& rules, const Design& design, const Measured& measured) {
    const bool square = design.own().tang.half_stop_mm.has_value();
    rules.require(square || !measured.half_stop_mm, "half_stop",
                  [] { return std::string("this tang has no half-stop: give closed alone"); });
    rules.require(!square || measured.half_stop_mm, "half_stop",
                  [] { return std::string("missing: this tang has a half-stop"); });
    if (measured.half_stop_mm) {
        rules.in_range("half_stop", *measured.half_stop_mm, -kLargestReadingMm, kLargestReadingMm,
                       "mm");
    }
    rules.in_range("closed", measured.closed_mm, -kLargestReadingMm, kLargestReadingMm, "mm");
}

/// What one pass takes of what is left to come off a face.
///
/// @param may_end  whether this may be the face's last pass
double share_mm(const PlanRules& rules, double left_mm, bool may_end) {
    const bool last = may_end && left_mm <= kThouMm && 10.0 * rules.repeatability_mm <= kThouMm;
    return last ? left_mm : (1.0 - rules.reserve) * left_mm;
}

FitStep describe(const PlanSubject& s, const FaceDepths& depths, double start_tip_mm) {
    const Design ground = take_off(s.now, depths);
    const FitReadings both = fit_readings(ground, s.unknowns);
    const Readings& shown = s.state == FitState::loaded ? both.loaded : both.unloaded;
    FitStep step;
    step.half_stop_mm = shown.half_stop_mm;
    step.closed_mm = shown.closed_mm.value();
    step.half_stop_loaded_mm = both.loaded.half_stop_mm;
    step.closed_loaded_mm = both.loaded.closed_mm.value();
    if (const auto tip = tip_height_mm(s.now, both.closed_angle_deg.value())) {
        step.tip_mm = *tip - start_tip_mm;
    }
    return step;
}

/// Splits the whole removal into passes; a face's part below `nothing_mm` is left standing.
void add_steps(FitPlan& plan, const PlanSubject& s, FaceDepths left, double start_tip_mm) {
    const double nothing_mm = s.near_mm;
    const double enough_mm = std::max(nothing_mm, s.rules.repeatability_mm);
    for (const TangFace face : kOrder) {
        if (left.of(face) < nothing_mm) left.of(face) = 0.0;
    }
    for (int pass = 1; pass <= kMostPasses; ++pass) {
        // The closed blade leans on the corner that the half-stop face shares, so its last pass
        // waits until that face is done.
        const bool closed_may_end = left.half_stop_mm == 0.0;
        for (const TangFace face : kOrder) {
            double& rest = left.of(face);
            const bool side = face == TangFace::closed || face == TangFace::kick;
            const double remove = share_mm(s.rules, rest, closed_may_end || !side);
            // Readings tell the first pass; what would follow it must be worth another reading.
            if (remove <= (pass == 1 ? 0.0 : enough_mm)) continue;
            rest -= remove;
            plan.removed.of(face) += remove;
            FitStep step = describe(s, plan.removed, start_tip_mm);
            step.step = static_cast<int>(plan.steps.size()) + 1;
            step.pass_number = plan.passes = pass;
            step.face = face;
            step.remove_mm = remove;
            plan.steps.push_back(std::move(step));
        }
        if (plan.passes < pass) return;
    }
}

TipRemoval wanted_removal(const PlanSubject& s) {
    const bool tip = s.rules.closed_by == ClosedGrind::level && kick_sets_tip(s);
    if (tip) return tip_removal(s, s.rules.tip_mm.value_or(0.0));
    return {.depths = least_removal(s), .runs_out = std::nullopt};
}

/// What a plan that keeps the tip level takes off; nothing where there is none.
std::optional<FaceDepths> level_removal(const PlanSubject& s) {
    if (!kick_sets_tip(s) || s.rules.closed_by == ClosedGrind::level) return std::nullopt;
    const TipRemoval level = tip_removal(s, 0.0);
    return level.runs_out ? std::nullopt : std::optional(level.depths);
}

}  // namespace

Design as_measured(const Design& design, const Measured& measured, const FitUnknowns& unknowns) {
    std::vector<Fault> broken = faults(design);
    if (!broken.empty()) throw InvalidInput(std::move(broken));
    Requirements rules;
    measured_rules(rules, design, measured);
    rules.throw_if_any();
    const auto [half, closed] = solve_faces(
        {.design = design,
         .unknowns = unknowns,
         .state = measured.state,
         .wanted = {.half_stop_mm = measured.half_stop_mm, .closed_mm = measured.closed_mm},
         .closed = kClosedSide,
         .already = {}});
    return take_off(design, sum(along(kHalfStop, half), along(kClosedSide, closed)));
}

FitPlan fit_plan(const Design& now,
                 FitState state,
                 const PlanRules& rules,
                 const FitUnknowns& unknowns) {
    Requirements broken;
    plan_rules(broken, rules);
    tip_rules(broken, now, rules);
    broken.throw_if_any();
    const double sd = rules.repeatability_mm;
    const PlanSubject subject{.now = now,
                              .state = state,
                              .rules = rules,
                              .unknowns = unknowns,
                              .aim_mm = rules.target_mm + std::max(kHairMm, 0.75 * sd),
                              .slack_mm = std::max(0.5 * kHairMm, 2.0 * sd),
                              .near_mm = std::max(0.5 * kHairMm, 0.25 * sd)};
    const Pair start = readings_of(now, {}, unknowns, FitState::loaded);
    FitPlan plan;
    plan.aim_mm = subject.aim_mm;
    plan.half_stop_loaded_mm = start.half_stop_mm;
    plan.closed_loaded_mm = *start.closed_mm;
    const double angle = fit_readings(now, unknowns).closed_angle_deg.value();
    const auto tip = tip_height_mm(now, angle);
    const TipRemoval removal = wanted_removal(subject);
    add_steps(plan, subject, removal.depths, tip.value_or(0.0));
    plan.now = now;
    plan.done = take_off(now, plan.removed);
    if (tip) plan.tip_mm = plan.steps.empty() ? 0.0 : *plan.steps.back().tip_mm;
    plan.tip_runs_out = removal.runs_out;
    if (moves_tip(plan, rules) && !rules.tip_mm) plan.level_removed = level_removal(subject);
    plan.notices = plan_notices(plan, rules);
    return plan;
}

FitPlan fit_plan(const Design& design,
                 const Measured& measured,
                 const PlanRules& rules,
                 const FitUnknowns& unknowns) {
    return fit_plan(as_measured(design, measured, unknowns), measured.state, rules, unknowns);
}

}  // namespace backspring

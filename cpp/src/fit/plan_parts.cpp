#include "plan_parts.hpp"

#include <algorithm>

#include "backspring/check/closed_blade.hpp"

namespace backspring {
namespace {

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

void number_rules(Requirements& rules, const PlanRules& given) {
    rules.in_range("target", given.target_mm, -1.0, 1.0, "mm");
    rules.in_range("repeatability", given.repeatability_mm, 0.0, 0.2, "mm");
    rules.in_range("least_off", given.least_off_mm, 0.0, 0.2, "mm");
    rules.in_range("reserve", given.reserve, 0.0, 0.8, "");
    const auto material = [&](const char* key, const std::optional<double>& mm) {
        if (mm) rules.in_range(key, *mm, 0.0, 50.0, "mm");
    };
    material("material.open", given.material.open_mm);
    material("material.half_stop", given.material.half_stop_mm);
    material("material.closed", given.material.closed_mm);
    material("material.kick", given.material.kick_mm);
}

}  // namespace

void detail::plan_rules(Requirements& rules, const Design& design, const PlanRules& given) {
    number_rules(rules, given);
    tip_rules(rules, design, given);
}

double detail::slack_mm(const PlanRules& rules) {
    const double read_mm = std::max(0.5 * kHairMm, 2.0 * rules.repeatability_mm);
    const bool spared = rules.spares_open && !rules.material.open_mm;
    return spared ? std::max(read_mm, rules.target_mm + 0.5 * kHairMm) : read_mm;
}

PlanSubject detail::subject_of(const Design& now,
                               FitState state,
                               const PlanRules& rules,
                               const FitUnknowns& unknowns) {
    const double sd = rules.repeatability_mm;
    return {.now = now,
            .state = state,
            .rules = rules,
            .unknowns = unknowns,
            .aim_mm = rules.target_mm + std::max(kHairMm, 0.75 * sd),
            .slack_mm = slack_mm(rules),
            .near_mm = std::max(0.5 * kHairMm, 0.25 * sd)};
}

TipRemoval detail::wanted_removal(const PlanSubject& s) {
    const bool tip = s.rules.closed_by == ClosedGrind::level && kick_sets_tip(s);
    if (tip) return tip_removal(s, s.rules.tip_mm.value_or(0.0));
    return {.depths = least_removal(s), .runs_out = std::nullopt};
}

std::optional<FaceDepths> detail::level_removal(const PlanSubject& s) {
    if (!kick_sets_tip(s) || s.rules.closed_by == ClosedGrind::level) return std::nullopt;
    const TipRemoval level = tip_removal(s, 0.0);
    return level.runs_out ? std::nullopt : std::optional(level.depths);
}

FitStep detail::describe(const PlanSubject& s, const FaceDepths& depths, double start_tip_mm) {
    const Design ground = take_off(s.now, depths);
    const FitReadings both = fit_readings(ground, s.unknowns);
    const Readings& shown = s.state == FitState::loaded ? both.loaded : both.unloaded;
    const bool alone = s.now.blades.size() == 1;
    FitStep step;
    step.blade = s.now.own().name;
    step.half_stop_mm = shown.half_stop_mm;
    step.closed_mm = shown.closed_mm.value();
    const Readings lowest = alone ? both.loaded : lowest_readings(ground, s.unknowns);
    step.half_stop_loaded_mm = lowest.half_stop_mm;
    step.closed_loaded_mm = lowest.closed_mm.value();
    if (const auto tip = tip_height_mm(s.now, both.closed_angle_deg.value())) {
        step.tip_mm = *tip - start_tip_mm;
    }
    return step;
}

}  // namespace backspring

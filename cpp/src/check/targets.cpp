#include "backspring/check/targets.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "check_parts.hpp"
#include "verdict_parts.hpp"

namespace backspring {
namespace {

constexpr double kLimitRounding = 1e-9;

TargetResult judge_yield(const std::optional<double>& stated, const std::optional<double>& margin) {
    const double least = stated.value_or(1.0);
    const bool met = is_within(margin, least, std::nullopt) || (!stated && !margin);
    return {"yield_margin", margin, least, std::nullopt, met, stated.has_value()};
}

/// How far inside its limits a value is, as a share of the limit; less than nothing outside.
double slack(const TargetResult& target) {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    if (!target.value) return target.met ? infinity : -infinity;
    double least = infinity;
    if (target.low) least = (*target.value - *target.low) / std::max(*target.low, 1e-300);
    if (target.high) {
        least = std::min(least, (*target.high - *target.value) / std::max(*target.high, 1e-300));
    }
    return least;
}

bool worse(const TargetResult& a, const TargetResult& b) {
    if (a.met != b.met) return !a.met;
    return slack(a) < slack(b);
}

}  // namespace

std::optional<double> farthest_from_flush_mm(const Readings& loaded, bool has_half_stop) {
    if (!loaded.closed_mm || (has_half_stop && !loaded.half_stop_mm)) return std::nullopt;
    return std::max({std::abs(*loaded.closed_mm), std::abs(loaded.half_stop_mm.value_or(0.0)),
                     std::abs(loaded.open_mm)});
}

std::optional<double> openings_margin(Solution& solution) {
    const Design& design = solution.design();
    if (!design.targets.openings) return std::nullopt;
    const Worked worked = worked_out(solution);
    std::vector<Margin> margins;
    judge_life(margins, design, worked, find_notches(design, worked));
    const auto fatigue = std::find_if(margins.begin(), margins.end(), [](const Margin& m) {
        return m.kind == MarginKind::fatigue;
    });
    return fatigue == margins.end() ? std::nullopt : fatigue->margin;
}

std::optional<double> edge_gap_left_mm(Solution& solution) {
    if (!solution.design().targets.edge_gap_mm) return std::nullopt;
    return eased_gap_mm(solution.design(), worked_out(solution));
}

JudgedFigures judged_figures(Solution& solution) {
    const Targets& targets = solution.design().targets;
    JudgedFigures figures;
    if (targets.pull_low_n || targets.pull_high_n) figures.pull_n = peak_pull_n(solution);
    if (const auto margin = yield_margin(solution)) figures.yield_margin = margin->value;
    if (targets.reading_mm) {
        figures.reading_mm = farthest_from_flush_mm(solution.readings(), solution.has_half_stop());
    }
    figures.openings_margin = openings_margin(solution);
    figures.edge_gap_mm = edge_gap_left_mm(solution);
    return figures;
}

bool is_within(const std::optional<double>& value,
               const std::optional<double>& low,
               const std::optional<double>& high) {
    const auto rounding = [](double limit) { return kLimitRounding * std::abs(limit); };
    return value && std::isfinite(*value) && (!low || *value >= *low - rounding(*low)) &&
           (!high || *value <= *high + rounding(*high));
}

std::vector<TargetResult> judge_targets(const Targets& targets, const JudgedFigures& figures) {
    std::vector<TargetResult> results;
    const auto judge = [&](const char* name, const std::optional<double>& value,
                           const std::optional<double>& low, const std::optional<double>& high) {
        if (!low && !high) return;
        results.push_back({name, value, low, high, is_within(value, low, high)});
    };
    const std::optional<double> least = targets.openings ? std::optional(1.0) : std::nullopt;
    judge("pull", figures.pull_n, targets.pull_low_n, targets.pull_high_n);
    results.push_back(judge_yield(targets.yield_margin, figures.yield_margin));
    judge("reading", figures.reading_mm, std::nullopt, targets.reading_mm);
    judge("openings", figures.openings_margin, least, std::nullopt);
    judge("edge_gap", figures.edge_gap_mm, targets.edge_gap_mm, std::nullopt);
    return results;
}

std::vector<TargetResult> worst_targets(const std::vector<std::vector<TargetResult>>& judged) {
    std::vector<TargetResult> worst;
    for (const std::vector<TargetResult>& targets : judged) {
        for (const TargetResult& target : targets) {
            const auto known = std::ranges::find(worst, target.name, &TargetResult::name);
            if (known == worst.end()) {
                worst.push_back(target);
            } else if (worse(target, *known)) {
                *known = target;
            }
        }
    }
    return worst;
}

}  // namespace backspring

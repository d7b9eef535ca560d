#include <algorithm>
#include <cmath>

#include "notices.hpp"

namespace backspring {
namespace {

/// A target against what the design does; what cannot be told is missed, not left out.
TargetResult result(const std::string& name,
                    std::optional<double> value,
                    std::optional<double> low,
                    std::optional<double> high) {
    const bool met = value && (!low || *value >= *low) && (!high || *value <= *high);
    return {.name = name, .value = value, .low = low, .high = high, .met = met};
}

std::optional<double> peak_pull(const Check& check) {
    std::optional<double> peak;
    for (const StrokeReport& stroke : check.strokes) {
        if (stroke.peak_pull_n) peak = std::max(peak.value_or(0.0), *stroke.peak_pull_n);
    }
    return peak;
}

double farthest_from_flush(const Check& check) {
    double farthest = 0.0;
    for (const Position& position : check.positions) {
        farthest = std::max(farthest, std::abs(position.reading_loaded_mm));
    }
    return farthest;
}

/// How many times over the spring's stress could be as high for the openings asked.
std::optional<double> openings_margin(const Check& check) {
    const auto fatigue =
        std::find_if(check.verdict.begin(), check.verdict.end(),
                     [](const Margin& m) { return m.kind == MarginKind::fatigue; });
    if (fatigue == check.verdict.end()) return std::nullopt;
    return fatigue->margin;
}

}  // namespace

std::vector<TargetResult> judge(const Targets& targets, const Check& check) {
    std::vector<TargetResult> results;
    if (targets.pull_low_n || targets.pull_high_n) {
        results.push_back(
            result("pull", peak_pull(check), targets.pull_low_n, targets.pull_high_n));
    }
    if (targets.yield_margin) {
        results.push_back(
            result("yield_margin", check.travel.yield_margin, targets.yield_margin, std::nullopt));
    }
    if (targets.reading_mm) {
        results.push_back(
            result("reading", farthest_from_flush(check), std::nullopt, targets.reading_mm));
    }
    if (targets.openings) {
        results.push_back(result("openings", openings_margin(check), 1.0, std::nullopt));
    }
    return results;
}

}  // namespace backspring

#include "backspring/check/case_solutions.hpp"

#include <algorithm>

#include "backspring/design/cases.hpp"
#include "backspring/strength/yielding.hpp"

namespace backspring {

CaseSolutions::CaseSolutions(const Design& design) {
    if (design.blades.size() == 1) {
        all_.emplace_back(design);
        return;
    }
    designs_ = cases(design);
    for (const Design& one : designs_) all_.emplace_back(one);
}

std::optional<double> peak_torque_nmm(CaseSolutions& cases) {
    return largest(cases, [](Solution& s) { return peak_torque_nmm(s); });
}

std::optional<double> peak_pull_n(CaseSolutions& cases) {
    return largest(cases, [](Solution& s) { return peak_pull_n(s); });
}

std::optional<double> least_peak_pull_n(CaseSolutions& cases) {
    return least(cases, [](Solution& s) { return peak_pull_n(s); });
}

const Stressed& most_stressed(CaseSolutions& cases) {
    const Stressed* worst = nullptr;
    for (Solution& solution : cases) {
        const Stressed& one = solution.most_stressed();
        if (!worst || one.peak.stress_mpa > worst->peak.stress_mpa) worst = &one;
    }
    return *worst;
}

std::optional<Band> yield_margin(CaseSolutions& cases) {
    return yield_margin(cases.front().design().strength.yield_mpa,
                        most_stressed(cases).peak.stress_mpa);
}

Readings readings(CaseSolutions& cases) {
    const auto open = [](Solution& s) { return std::optional(s.readings().open_mm); };
    return {.closed_mm = farthest(cases, [](Solution& s) { return s.readings().closed_mm; }),
            .half_stop_mm = farthest(cases, [](Solution& s) { return s.readings().half_stop_mm; }),
            .open_mm = farthest(cases, open).value()};
}

std::vector<TargetResult> judge_targets(CaseSolutions& cases) {
    std::vector<std::vector<TargetResult>> judged;
    for (Solution& solution : cases) {
        judged.push_back(judge_targets(solution.design().targets, judged_figures(solution)));
    }
    return worst_targets(judged);
}

bool snaps_everywhere(CaseSolutions& cases) {
    return std::ranges::all_of(cases, [](Solution& s) { return snaps_everywhere(s); });
}

}  // namespace backspring

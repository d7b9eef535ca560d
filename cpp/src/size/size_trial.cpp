#include "size_trial.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/check/case_solutions.hpp"
#include "backspring/core/error.hpp"

namespace backspring {
namespace {

// Margins whose difference nobody feels, as a share.
constexpr double kAlike = 1e-7;

void measure(Trial& trial) {
    CaseSolutions solved(trial.design);
    if (!snaps_everywhere(solved)) {
        trial.fault = {.code = NoticeCode::does_not_stay};
        return;
    }
    trial.pull_n = peak_pull_n(solved);
    const double stress = most_stressed(solved).peak.stress_mpa;
    trial.yield_margin = trial.design.strength.yield_mpa.value / stress;
}

}  // namespace

Trial detail::try_design(Design design) {
    Trial trial{.design = std::move(design), .sizes_mm = {}, .pull_n = {}, .fault = {}};
    if (const std::vector<Fault> broken = faults(trial.design); !broken.empty()) {
        trial.fault = broken_rule(NoticeCode::breaks_rule, broken.front());
        return trial;
    }
    measure(trial);
    return trial;
}

double Wanted::miss(const Trial& trial) const {
    return target.pull_n ? *trial.pull_n / *target.pull_n - 1.0
                         : trial.yield_margin / *target.yield_margin - 1.0;
}

double Wanted::spare(const Trial& trial) const {
    return target.yield_margin ? trial.yield_margin / *target.yield_margin - 1.0 : 0.0;
}

bool Wanted::strong_enough(const Trial& trial) const {
    return !target.pull_n || is_within(trial.yield_margin, target.yield_margin, std::nullopt);
}

void Found::add(const Found& more) {
    answers.insert(answers.end(), more.answers.begin(), more.answers.end());
    others.insert(others.end(), more.others.begin(), more.others.end());
}

const Trial* detail::nearest_of(const std::vector<Trial>& trials, const Wanted& wanted) {
    const auto better = [&](const Trial& a, const Trial& b) {
        const bool strong = wanted.strong_enough(a);
        if (strong != wanted.strong_enough(b)) return strong;
        // Where the margin stays too small and hardly depends on a measure, the pull decides.
        const double stronger = wanted.spare(a) - wanted.spare(b);
        if (!strong && std::abs(stronger) > kAlike) return stronger > 0.0;
        return std::abs(wanted.miss(a)) < std::abs(wanted.miss(b));
    };
    const auto best = std::min_element(trials.begin(), trials.end(), better);
    return best == trials.end() ? nullptr : &*best;
}

}  // namespace backspring

#include "size_trial.hpp"

#include <algorithm>
#include <cmath>

#include "../check/check_parts.hpp"
#include "backspring/check/look.hpp"
#include "backspring/core/error.hpp"

namespace backspring {
namespace {

// Rounding of a margin that a root has been solved for.
constexpr double kRounding = 1e-9;
// Margins whose difference nobody feels, as a share.
constexpr double kAlike = 1e-7;

void measure(Trial& trial) {
    const Design& design = trial.design;
    const Action action = make_action(design);
    const Rests rests = find_rests(action.joint, design.tang.half_stop_mm.has_value());
    const double start = rests.closed ? rests.closed->blade_angle_deg : 0.0;
    const std::vector<Step> steps = sweep(action, start, 180.0, 1.0);
    const std::vector<Stroke> strokes = make_strokes(action, steps, rests);
    const std::size_t whole = design.tang.half_stop_mm ? 2 : 1;
    if (strokes.size() < whole) {
        trial.fault = {.code = NoticeCode::does_not_stay};
        return;
    }
    double torque = 0.0;
    for (const Stroke& stroke : strokes) torque = std::max(torque, stroke.peak_torque_nmm);
    if (const auto& nick = design.blade.nail_nick_mm) trial.pull_n = torque / *nick;
    const double stress = peak_stress(action, most_stressed(action, steps)).stress_mpa;
    trial.yield_margin = design.strength.yield_mpa.value / stress;
}

}  // namespace

Trial try_design(Design design) {
    Trial trial{.design = std::move(design), .sizes_mm = {}, .pull_n = {}, .fault = {}};
    if (const std::vector<Fault> broken = faults(trial.design); !broken.empty()) {
        trial.fault = {.code = NoticeCode::breaks_rule,
                       .names = {{"key", broken.front().key}, {"rule", message(broken.front())}}};
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
    return !target.pull_n || spare(trial) >= -kRounding;
}

void Found::add(const Found& more) {
    answers.insert(answers.end(), more.answers.begin(), more.answers.end());
    others.insert(others.end(), more.others.begin(), more.others.end());
}

const Trial* nearest_of(const std::vector<Trial>& trials, const Wanted& wanted) {
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

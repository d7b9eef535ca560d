#include "backspring/check/check.hpp"

#include <algorithm>

#include "check_parts.hpp"
#include "notices.hpp"

namespace backspring {

const Position* Check::position(const std::string& name) const {
    const auto found = std::find_if(positions.begin(), positions.end(),
                                    [&](const Position& p) { return p.name == name; });
    return found == positions.end() ? nullptr : &*found;
}

Check check(const Design& design, double step_deg) { return detail::check(design, step_deg, true); }

Check detail::check(const Design& design, double step_deg, bool with_verdict) {
    Solution solution(design, step_deg);
    const Stressed& stressed = solution.most_stressed();
    Check result;
    result.positions = make_positions(solution);
    result.strokes = make_reports(design, solution.rests(), solution.strokes());
    result.travel = make_travel(design, solution.strongest(), stressed.contact, stressed.peak);
    result.stiffness_n_per_mm = solution.stiffness_n_per_mm();
    if (const auto& closed = solution.rests().closed) {
        result.closed_blade = closed_blade(design, solution.joint(), *closed);
    }
    result.impossible = take_out_impossible(result, design);
    const bool possible = result.impossible.empty();
    if (with_verdict && possible) result.verdict = verdict(design, worked_out(solution));
    const JudgedFigures figures = possible ? judged_figures(solution) : JudgedFigures{};
    result.targets = judge_targets(design.targets, figures);
    result.notices = find_notices(design, solution.joint(), result);
    return result;
}

}  // namespace backspring

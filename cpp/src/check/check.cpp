#include "backspring/check/check.hpp"

#include <algorithm>

#include "backspring/design/cases.hpp"
#include "beside.hpp"
#include "check_parts.hpp"
#include "notices.hpp"
#include "surface_notices.hpp"

namespace backspring {
namespace {

const Position* find_position(const std::vector<Position>& positions, const std::string& name) {
    const auto found = std::ranges::find(positions, name, &Position::name);
    return found == positions.end() ? nullptr : &*found;
}

}  // namespace

const Position* Beside::position(const std::string& name) const {
    return find_position(positions, name);
}

const Position* Check::position(const std::string& name) const {
    return find_position(positions, name);
}

Check detail::check_case(Solution& solution, bool with_verdict) {
    const Design& design = solution.design();
    const Stressed& stressed = solution.most_stressed();
    Check result;
    result.blade = design.own().name;
    result.stop_band = stop_band(solution);
    result.positions = make_positions(solution, result.stop_band);
    result.strokes = make_reports(design, solution.rests(), solution.strokes());
    result.travel = make_travel(design, solution.strongest(), stressed.contact, stressed.peak);
    result.stiffness_n_per_mm = solution.stiffness_n_per_mm();
    if (const auto& closed = solution.rests().closed) {
        result.closed_blade = closed_blade(design, solution.joint(), *closed);
    }
    result.impossible = take_out_impossible(result, design);
    const bool possible = result.impossible.empty();
    std::vector<Notice> surface;
    if (with_verdict && possible) {
        const Worked worked = worked_out(solution);
        result.verdict = verdict(design, worked);
        surface = surface_notices(design, worked);
    }
    const JudgedFigures figures = possible ? judged_figures(solution) : JudgedFigures{};
    result.targets = judge_targets(design.targets, figures);
    result.notices = find_notices(design, solution.joint(), solution.rests(), result);
    result.notices.insert(result.notices.end(), surface.begin(), surface.end());
    return result;
}

Check detail::check(const Design& design, bool with_verdict) {
    if (design.blades.size() == 1) {
        Solution solution(design);
        return check_case(solution, with_verdict);
    }
    std::vector<Check> checks;
    for (const Design& one : cases(design)) {
        Solution solution(one);
        checks.push_back(check_case(solution, with_verdict));
        checks.back().beside = {beside(solution, checks.back())};
    }
    return worst_of_cases(std::move(checks));
}

Check check(const Design& design) { return detail::check(design, true); }

std::vector<Check> check_blades(const Design& design) {
    std::vector<Check> checks;
    for (std::size_t i = 0; i < design.blades.size(); ++i) {
        checks.push_back(check(seen_from(design, i)));
    }
    return checks;
}

}  // namespace backspring

#include "backspring/check/check.hpp"

#include <algorithm>

#include "backspring/check/look.hpp"
#include "backspring/core/require.hpp"
#include "check_parts.hpp"
#include "notices.hpp"

namespace backspring {

const Position* Check::position(const std::string& name) const {
    const auto found = std::find_if(positions.begin(), positions.end(),
                                    [&](const Position& p) { return p.name == name; });
    return found == positions.end() ? nullptr : &*found;
}

Check check(const Design& design, double step_deg) { return check(design, step_deg, true); }

Check check(const Design& design, double step_deg, bool with_verdict) {
    Requirements rules;
    rules.in_range("step_deg", step_deg, 0.05, 5.0, "deg");
    rules.throw_if_any();
    const Action action = make_action(design);
    const Rests rests = find_rests(action.joint, design.tang.half_stop_mm.has_value());
    const double start = rests.closed ? rests.closed->blade_angle_deg : 0.0;
    const std::vector<Step> steps = sweep(action, start, 180.0, step_deg);
    const std::vector<Stroke> strokes = make_strokes(action, steps, rests);
    const Contact stressed = most_stressed(action, steps);

    Check result;
    result.positions = make_positions(design, action, rests);
    result.strokes = make_reports(design, rests, strokes);
    result.travel =
        make_travel(design, strongest(action, steps), stressed, peak_stress(action, stressed));
    const double pivot = design.tang.pivot_mm;
    result.stiffness_n_per_mm = 1.0 / deflection_per_force(action.joint.flexibility, pivot, pivot);
    if (with_verdict) result.verdict = verdict(design, {action, steps, rests, strokes, stressed});
    result.targets = judge(design.targets, result);
    result.notices = find_notices(design, action.joint, result);
    return result;
}

}  // namespace backspring

#include "backspring/check/check_two.hpp"

#include <algorithm>

#include "backspring/core/require.hpp"
#include "two_view.hpp"

namespace backspring {
namespace {

double mm_per_n(const Joint& joint) {
    return deflection_per_force(joint.flexibility, joint.pivot_mm, joint.pivot_mm);
}

/// Both tangs taken to bear at their pivots: how one end yields while the other tang stands still.
double stiffness_n_per_mm(const TwoJoints& joints, const Joint& own, const Joint& other) {
    const double levers = own.pivot_mm / other.pivot_mm;
    if (joints.turns) return 1.0 / (mm_per_n(own) + levers * levers * mm_per_n(other));
    const double cross = own.pivot_mm * other.pivot_mm * joints.cross_rad_per_nmm;
    return 1.0 / (mm_per_n(own) - cross * cross / mm_per_n(other));
}

std::vector<Beside> rows_of(const TwoView& view, double step_deg) {
    std::vector<Beside> rows;
    for (const Place& place : places_of(view.other.own().tang)) {
        rows.push_back(look_beside(view, place, step_deg));
    }
    return rows;
}

}  // namespace

const Position* Beside::position(const std::string& name) const {
    const auto found = std::find_if(positions.begin(), positions.end(),
                                    [&](const Position& p) { return p.name == name; });
    return found == positions.end() ? nullptr : &*found;
}

TwoCheck check_two(const TwoBlades& two, double step_deg) {
    Requirements rules;
    rules.in_range("step_deg", step_deg, 0.05, 5.0, "deg");
    rules.throw_if_any();
    const TwoJoints joints = make_two_joints(two);
    const WholeSpring whole = make_whole_spring(two);
    const Design second = second_end(two);
    const TwoView of_first{joints, whole, two.first, second, false};
    const TwoView of_second{joints, whole, second, two.first, true};

    TwoCheck result;
    result.first = rows_of(of_first, step_deg);
    result.second = rows_of(of_second, step_deg);
    result.first_stiffness_n_per_mm = stiffness_n_per_mm(joints, joints.first, joints.second);
    result.second_stiffness_n_per_mm = stiffness_n_per_mm(joints, joints.second, joints.first);
    result.cross_rad_per_nmm = joints.cross_rad_per_nmm;
    result.targets = judge(two.first.targets, result);
    add_notices(result.notices, of_first, result.first);
    add_notices(result.notices, of_second, result.second);
    return result;
}

}  // namespace backspring

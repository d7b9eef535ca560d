#include "backspring/action/sweep.hpp"

#include <cmath>

#include "backspring/core/error.hpp"
#include "backspring/core/require.hpp"

namespace backspring {

Turn turn_at(const Action& action, double blade_angle_deg) {
    Turn turn;
    turn.contact = contact_at(action.joint, blade_angle_deg);
    turn.friction_nmm = friction_torque_nmm(turn.contact, action.friction, action.joint.pivot_mm);
    return turn;
}

PeakStress peak_stress(const Action& action, const Contact& contact) {
    return peak_stress(action.probe, loads(contact));
}

std::vector<Step> sweep(const Action& action, double from_deg, double to_deg, double step_deg) {
    constexpr double most_steps = 1e6;
    Requirements rules;
    const bool positive = rules.positive("step_deg", step_deg, 360.0, "deg");
    rules.require(to_deg >= from_deg, "to_deg", [&] {
        return "must be at least from_deg, " + with_unit(from_deg, "deg") + ", got " +
               with_unit(to_deg, "deg");
    });
    const double count = std::floor((to_deg - from_deg) / step_deg + 1e-9);
    rules.require(!positive || count <= most_steps, "step_deg", [&] {
        return "must give at most 1000000 steps, got " + with_unit(step_deg, "deg");
    });
    rules.throw_if_any();
    std::vector<Step> steps;
    const int whole = static_cast<int>(count);
    steps.reserve(static_cast<std::size_t>(whole) + 2);
    const auto add = [&](double angle) {
        const Turn turn = turn_at(action, angle);
        steps.push_back({turn, peak_stress(action, turn.contact)});
    };
    for (int i = 0; i <= whole; ++i) add(from_deg + i * step_deg);
    if (to_deg - steps.back().turn.contact.blade_angle_deg > 1e-9) add(to_deg);
    return steps;
}

}  // namespace backspring

#include "backspring/action/sweep.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "backspring/core/error.hpp"
#include "backspring/core/require.hpp"

namespace backspring {

namespace {

/// Of the tang's forces and the stop's, which bends the spring and presses along it.
PeakStress peak_on_stop(const Action& action, const Contact& contact) {
    const EndStop& stop = *action.joint.stop;
    const double force = contact.stop.force_n;
    Loads ahead = loads_ahead(contact);
    ahead.push_back({stop.push.at_mm, stop.across() * force});
    return peak_stress(action.probe, ahead, stop.push, force);
}

}  // namespace

Action make_action(const Spring& spring, Joint joint, StressProbe probe, const Friction& friction) {
    Action action{.joint = std::move(joint), .probe = std::move(probe), .friction = friction};
    if (friction.bends) action.bent_by_friction = spring;
    return action;
}

void add_friction(const Action& action, Turn& turn) {
    const Contact& contact = turn.contact;
    turn.friction_nmm = friction_torque_nmm(contact, action.friction, action.joint.pivot_mm);
    if (const auto& spring = action.bent_by_friction) {
        turn.couple = friction_couple(*spring, action.joint, contact, action.friction);
    }
}

Turn make_turn(const Action& action, Contact contact) {
    Turn turn{std::move(contact)};
    add_friction(action, turn);
    return turn;
}

Turn turn_at(const Action& action, double blade_angle_deg) {
    return make_turn(action, contact_at(action.joint, blade_angle_deg));
}

PeakStress peak_stress(const Action& action, const Contact& contact) {
    if (contact.stop.force_n != 0.0) return peak_on_stop(action, contact);
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

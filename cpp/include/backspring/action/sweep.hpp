#pragma once

#include <vector>

#include "backspring/action/friction.hpp"
#include "backspring/action/friction_couple.hpp"

namespace backspring {

/// All that turning a blade needs besides the angle.
struct Action {
    Joint joint;
    StressProbe probe;
    Friction friction;
    std::optional<Spring> bent_by_friction = {};  ///< the spring, where friction's couple counts
};

/// The joint at one blade angle with what friction takes there.
struct Turn {
    Contact contact;
    double friction_nmm = 0.0;  ///< torque that friction takes [N mm]
    FrictionCouple couple{};    ///< what it adds as it bends the spring; 0 where that is left out

    [[nodiscard]] double opening_nmm() const {
        return contact.torque_nmm + friction_nmm + couple.opening_nmm;
    }
    [[nodiscard]] double closing_nmm() const {
        return contact.torque_nmm - friction_nmm + couple.closing_nmm;
    }
};

/// Contact and friction at one blade angle.
[[nodiscard]] Turn turn_at(const Action& action, double blade_angle_deg);

/// Joint, friction and where the stress can peak, of a spring.
[[nodiscard]] Action make_action(const Spring& spring,
                                 Joint joint,
                                 StressProbe probe,
                                 const Friction& friction);

/// Adds what friction takes at a turn's contact.
void add_friction(const Action& action, Turn& turn);

/// A contact with what friction takes there.
[[nodiscard]] Turn make_turn(const Action& action, Contact contact);

/// Worst stress along the spring under a contact's forces, an open blade's stop among them.
[[nodiscard]] PeakStress peak_stress(const Action& action, const Contact& contact);

/// One angle of a sweep.
struct Step {
    Turn turn;
    PeakStress peak;  ///< worst place along the spring
};

/// Steps at equal angles from one angle to another, both included.
///
/// The last step is shorter when the span is no multiple of the step.
///
/// @throws InvalidInput  step not greater than 0, or more than a million steps
[[nodiscard]] std::vector<Step> sweep(const Action& action,
                                      double from_deg,
                                      double to_deg,
                                      double step_deg);

}  // namespace backspring

#pragma once

#include <Eigen/Core>
#include <vector>

#include "backspring/action/friction.hpp"

namespace backspring {

/// All that turning a blade needs besides the angle.
struct Action {
    Joint joint;
    StressProbe probe;
    Friction friction;
};

/// The joint at one blade angle with what friction takes there.
struct Turn {
    Contact contact;
    double friction_nmm = 0.0;  ///< torque that friction takes [N mm]

    [[nodiscard]] double opening_nmm() const { return contact.torque_nmm + friction_nmm; }
    [[nodiscard]] double closing_nmm() const { return contact.torque_nmm - friction_nmm; }
};

/// Contact and friction at one blade angle.
[[nodiscard]] Turn turn_at(const Action& action, double blade_angle_deg);

/// Worst bending stress along the spring under a contact's forces.
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

/// A sweep as columns, one entry a step.
struct Sweep {
    Eigen::ArrayXd blade_angle_deg;     ///< 0 closed, 180 open [deg]
    Eigen::ArrayXd force_n;             ///< of the tang on the spring [N]
    Eigen::ArrayXd opening_torque_nmm;  ///< to open against, friction included [N mm]
    Eigen::ArrayXd closing_torque_nmm;  ///< left when closing; same sign, + resists opening [N mm]
    Eigen::ArrayXd energy_mj;           ///< strain energy [mJ]
    Eigen::ArrayXd peak_stress_mpa;     ///< worst along the spring, net section [MPa]
    Eigen::ArrayXd peak_stress_station_mm;  ///< where that is [mm]
};

/// Turns steps into columns.
[[nodiscard]] Sweep columns(const std::vector<Step>& steps);

}  // namespace backspring

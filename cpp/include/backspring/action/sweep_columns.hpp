#pragma once

#include <Eigen/Core>
#include <vector>

#include "backspring/action/sweep.hpp"

namespace backspring {

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

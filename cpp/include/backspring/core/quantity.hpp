#pragma once

namespace backspring {

/// What kind of thing a number measures; its unit in the core stands beside each.
enum class Quantity {
    length,          ///< [mm]
    force,           ///< [N]
    stress,          ///< [MPa]
    torque,          ///< [N mm]
    energy,          ///< [mJ]
    angle,           ///< [deg]
    ratio,           ///< a plain number
    count,           ///< a whole number of times
    hardness,        ///< [HRC]
    temperature,     ///< [C]
    time,            ///< [h]
    mass,            ///< [g]
    inertia,         ///< [g mm2]
    stiffness,       ///< [N/mm]
    root_stiffness,  ///< [N mm/rad]
    speed,           ///< [m/s]
    angular_speed,   ///< [deg/s]
};

}  // namespace backspring

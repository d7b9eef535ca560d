#pragma once

#include <string>
#include <string_view>

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
    inertia,         ///< [kg mm2]
    stiffness,       ///< [N/mm]
    root_stiffness,  ///< [N mm/rad]
    speed,           ///< [m/s]
    angular_speed,   ///< [deg/s]
    compliance,      ///< [mm/N]
};

/// The core's unit of a quantity as it is printed; nothing for ratio and count.
[[nodiscard]] std::string_view unit_of(Quantity quantity);

/// A number as plain text prints it, with the core's unit when it has one.
[[nodiscard]] std::string with_unit(double value, Quantity quantity);

}  // namespace backspring

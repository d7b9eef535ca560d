#pragma once

#include <optional>

#include "backspring/action/turns.hpp"

namespace backspring {

/// Yield stress taken for a pin or a liner of which nothing is said: annealed stainless, the
/// softest in common use; cold-drawn stainless, half-hard nickel silver and brass carry more.
///
/// @source handbook-values
inline constexpr double kSoftMetalYieldMpa = 240.0;

/// Largest forces of a travel on both pins, each with its own angle.
struct WorstPinForces {
    PinForces forces;               ///< largest of each [N]
    double middle_angle_deg = 0.0;  ///< blade angle of the middle pin's [deg]
    double rear_angle_deg = 0.0;    ///< blade angle of the rear pin's [deg]
};

/// Looks for the largest pin forces of a travel.
///
/// @returns  nothing without two pins
/// @source statics
/// @note  the outward part of the contact forces only: slope and friction along the spring add
///        about 1 % to the resultant
[[nodiscard]] std::optional<WorstPinForces> worst_pin_forces(const Spring& spring,
                                                             const Turns& travel);

/// A pin through the spring and a liner on either side.
struct PinInput {
    double force_n = 0.0;                         ///< of the pin on the spring [N]
    double pin_mm = 0.0;                          ///< diameter [mm]
    double spring_width_mm = 0.0;                 ///< across the liners [mm]
    std::optional<double> liner_mm;               ///< thickness of one liner [mm]
    double pin_yield_mpa = kSoftMetalYieldMpa;    ///< [MPa]
    double spring_yield_mpa = 0.0;                ///< [MPa]
    double liner_yield_mpa = kSoftMetalYieldMpa;  ///< [MPa]
};

/// A mean stress with its limit.
struct LimitedStress {
    double stress_mpa = 0.0;       ///< [MPa]
    double limit_mpa = 0.0;        ///< [MPa]
    std::optional<double> margin;  ///< limit over stress; none without force
};

/// How a pin bears its force.
struct PinStress {
    LimitedStress shear;                         ///< of the pin, two planes
    LimitedStress spring_bearing;                ///< between pin and spring
    std::optional<LimitedStress> liner_bearing;  ///< between pin and each liner
};

/// Mean shear stress of a pin and mean pressure in its holes.
///
/// The pin is cut in two planes, one at each liner: shear 2 F/(pi d^2), against 0.577 yield. It
/// presses with F/(d b) in the spring and F/(2 d t) in each liner, against the yield stress of the
/// softer of the two.
///
/// @throws InvalidInput  with every broken rule
/// @source shigley-9, hibbeler-10
/// @note   bending of the pin is left out: liners and spring lie close and the pin is headed over
[[nodiscard]] PinStress pin_stress(const PinInput& input);

}  // namespace backspring

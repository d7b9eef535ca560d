#pragma once

namespace backspring {

/// How the spring is held at and behind the middle pin.
enum class SupportKind {
    two_pins,        ///< turns on both pins
    clamped,         ///< ideal cantilever from the middle pin
    root_stiffness,  ///< rotation at the middle pin against a given stiffness
};

/// The root of the spring.
struct Support {
    SupportKind kind = SupportKind::two_pins;  ///< how it is held
    double rear_pin_mm = 0.0;                  ///< middle pin to rear pin, with two pins [mm]
    double root_stiffness_nmm_per_rad = 0.0;   ///< with a root stiffness [N mm/rad]
};

}  // namespace backspring

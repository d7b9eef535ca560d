#pragma once

#include "backspring/action/contact.hpp"

namespace backspring {

/// Coulomb friction where the blade turns.
struct Friction {
    double spring = 0.0;        ///< coefficient, tang on spring
    double pivot = 0.0;         ///< coefficient, blade on pivot pin
    double pivot_pin_mm = 0.0;  ///< diameter of the pivot pin [mm]
    bool bends = false;         ///< whether its couple on the spring counts, see friction_couple()
};

/// Torque that friction takes, whichever way the blade turns.
///
/// mu sum P |w - s X| at the spring (X, w: contact from the pivot) and mu_p N d/2 at the pin, N the
/// resultant of the contact forces; of a blade that is taken along as well, which rubs as much.
///
/// @returns  [N mm], >= 0
/// @source Coulomb friction; thin-pin form
/// @note   what friction does to the spring's bending is friction_couple()'s
[[nodiscard]] double friction_torque_nmm(const Contact& contact,
                                         const Friction& friction,
                                         double pivot_mm);

}  // namespace backspring

#pragma once

#include <vector>

#include "backspring/spring/spring.hpp"

namespace backspring {

/// A place where the belly turns inward between two straight stretches.
struct Kink {
    double station_mm = 0.0;    ///< [mm]
    double thickness_mm = 0.0;  ///< where the stretches meet [mm]
    double angle_rad = 0.0;     ///< between them, > 0 [rad]
};

/// Kinks of a belly that turn inward: a steep stretch that goes over into a flatter one, say.
///
/// @param profile  thickness along the spring, the back straight
/// @returns        none at steps, which are shoulders, and none that turn outward: those carry
///                 less than the beam says
[[nodiscard]] std::vector<Kink> find_kinks(const Profile& profile);

/// Kinks of a spring's belly, which lies half the thickness below the mid-line where one is given.
///
/// @note  of a mid-line that is given, corners under 2 degrees are taken for points of a curve
[[nodiscard]] std::vector<Kink> find_kinks(const Spring& spring);

/// Factor of a belly kink with a root radius, on the bending stress of the section there.
///
/// K = (0.9 t/(r a))^(2 a/(pi + 2 a)), at least 1. The arc of the root is r a long; the exponent is
/// that of the stress at a sharp corner of solid angle pi + a, to second order in a. The 0.9 is
/// ours, fitted against plane-stress models.
///
/// @param angle_rad       the belly turns by, to 45 degrees; 0 or less, outward, gives 1 [rad]
/// @param thickness_mm    where the stretches meet [mm]
/// @param root_radius_mm  0.01 thickness or more [mm]
/// @throws OutOfRange     a larger angle or a smaller root radius
/// @source derived
/// @note   within 2 % of plane-stress models up to 20 degrees, within 4 % up to 45; both stretches
///         at least as long as the thickness. A kink nearer than that adds to it when it turns
///         inward too
[[nodiscard]] double kink_factor(double angle_rad, double thickness_mm, double root_radius_mm);

}  // namespace backspring

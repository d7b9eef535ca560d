#pragma once

#include <span>
#include <vector>

#include "backspring/strength/plastic_spring.hpp"

namespace backspring {

/// A spring bent, perhaps beyond its yield stress, and let go.
struct BentSpring {
    std::vector<Load> loads;         ///< that bent it
    FaceShift shift;                 ///< what stays
    std::vector<PlasticZone> zones;  ///< where it has yielded, from the rear
};

/// Bends a spring by forces and lets it go.
///
/// Curvature follows the moment section by section; what stays of it is summed along the whole
/// spring, rear span included, by the unit-load theorem. Shear and the root stay elastic.
///
/// @param loads      ahead of the middle pin, outward
/// @param yield_mpa  [MPa], > 0
/// @throws OutOfRange  forces that no elastic, perfectly plastic spring can bear
/// @source unit-load theorem; elastic, perfectly plastic bending
[[nodiscard]] BentSpring bend_by_force(const Spring& spring,
                                       std::span<const Load> loads,
                                       double yield_mpa);

/// Holds a spring away from its free shape and lets it go.
///
/// The forces are those at which elastic and plastic movement together make the rise. Where a
/// section has no more to give, it turns as a hinge without more force.
///
/// @param holds      one or two
/// @param yield_mpa  [MPa], > 0
/// @throws InvalidInput  none, or more than two
/// @source unit-load theorem; elastic, perfectly plastic bending
[[nodiscard]] BentSpring bend_by_hold(const Spring& spring,
                                      std::span<const Hold> holds,
                                      double yield_mpa);

}  // namespace backspring

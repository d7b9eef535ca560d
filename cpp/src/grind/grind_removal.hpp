#pragma once

#include "backspring/grind/grind.hpp"
#include "backspring/spring/profile.hpp"

namespace backspring::detail {

/// Values of a profile just behind and just ahead of a station; they differ at a step.
struct Sides {
    double behind;
    double ahead;
};

/// Both values of a profile at a station.
[[nodiscard]] Sides sides(const Profile& profile, double x_mm);

/// First and last station of the spring's steel.
[[nodiscard]] GrindRegion whole_spring(const Design& design);

/// Thickness less a depth that is straight between its stations and nothing beyond them.
///
/// @param removal  at least two stations within the spring; two alike make a step
[[nodiscard]] Profile thinned(const Design& design, const Profile& removal);

/// Moves the mid-line away from a face by half of what is taken off it.
///
/// @param towards_back  off the back (+1) or the belly (-1)
void move_mid_line(Spring& spring, const Profile& removal, double towards_back);

/// A stop that reaches above a back that is ground bears at its edge from then on.
void lower_stops(Design& ground);

/// Takes a depth off the back (+1) or the belly (-1): thickness falls, holes stay in place.
void take_off(Design& design, const Profile& removal, double towards_back);

/// Least thickness between two stations, both included.
[[nodiscard]] double thinnest_mm(const Profile& profile, double from_mm, double to_mm);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

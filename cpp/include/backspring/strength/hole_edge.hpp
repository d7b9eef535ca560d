#pragma once

#include "backspring/spring/hole.hpp"
#include "backspring/strength/local_stress.hpp"

namespace backspring {

/// Factor of a round hole in the middle of a strip in tension, on the net section's stress.
///
/// 3 - 3.13 x + 3.66 x^2 - 1.53 x^3, x the hole's diameter over the strip's depth.
///
/// @param diameter_ratio  x, 0 to 1
/// @throws OutOfRange     outside
/// @source roark
[[nodiscard]] double hole_tension_factor(double diameter_ratio);

/// Largest stress at the edge of a pin hole in a bent spring, on the side nearer a face.
///
/// The net section gives the stress s0 at the hole's centre and its change 's1' from there to the
/// hole's edge. A hole in the middle has s0 = 0 and twice the nominal stress, 2 s1. One off the
/// mid-line adds k s0: k is the tension factor of a hole as near to both faces as this one is to
/// the near face. For a small hole that is the exact 3 s0 + 2 s1.
///
/// @param thickness_mm  whole thickness at the hole [mm]
/// @param width_mm      across the liners [mm]
/// @param moment_nmm    + bends the pad outward: tension on the belly [N mm]
/// @returns             nominal is the net section's stress at that edge; both edges of a hole in
///                      the middle carry the same: the one in tension is told
/// @throws OutOfRange   diameter over 0.75 of the thickness, or less than a tenth of the thickness
///                      left between hole and near face
/// @source roark for the hole in the middle; derived for the small one off the mid-line
/// @note   within 5 % of plane-stress models with a free hole. With the pin bearing in it, at the
///         middle pin of a tapered spring, within 5 % with an overhang of 32 mm and at most 10 %
///         high with one of 16 mm, diameters 0.3 to 0.65 of the thickness. A hole without moment
///         is not covered: at the rear pin bearing and shear raise the edge to at most a quarter
///         of the middle pin's
[[nodiscard]] LocalStress hole_edge_stress(double thickness_mm,
                                           double width_mm,
                                           const Hole& hole,
                                           double moment_nmm);

}  // namespace backspring

#pragma once

namespace backspring {

/// Factor of two opposite round-bottomed grooves, on the net section's bending stress.
///
/// C1 + C2 x + C3 x^2 + C4 x^3, x = 2 h/D, the C from h/r in two ranges.
///
/// @param thickness_mm  D, beside the grooves [mm]
/// @param depth_mm      h, of each groove [mm]
/// @param radius_mm     r, of the bottom [mm]
/// @throws OutOfRange   h/r outside 0.25 to 50, or grooves that meet
/// @source roark
/// @note   within 10 % of plane-stress models with h/D from 0.02 to 0.4
[[nodiscard]] double groove_factor(double thickness_mm, double depth_mm, double radius_mm);

/// Factor of one round-bottomed groove across the spring, a file mark say.
///
/// That of a bar with the same groove on both faces whose net section is one and a half times as
/// thick. The one and a half is ours, fitted against plane-stress models.
///
/// @param thickness_mm  beside the groove [mm]
/// @param depth_mm      [mm]
/// @param radius_mm     of the bottom [mm]
/// @throws OutOfRange   depth outside 0.02 to 0.2 or radius outside 0.02 to 0.3 of the thickness,
///                      or depth over radius outside 0.25 to 5
/// @source roark
/// @note   within 8 % of plane-stress models
[[nodiscard]] double one_sided_groove_factor(double thickness_mm,
                                             double depth_mm,
                                             double radius_mm);

}  // namespace backspring

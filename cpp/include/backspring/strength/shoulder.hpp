#pragma once

#include <vector>

#include "backspring/spring/profile.hpp"

namespace backspring {

/// A step of the thickness.
struct Shoulder {
    double station_mm = 0.0;  ///< [mm]
    double large_mm = 0.0;    ///< thickness on the thick side [mm]
    double small_mm = 0.0;    ///< on the thin side [mm]
};

/// Steps of the thickness: two stations at one place.
[[nodiscard]] std::vector<Shoulder> find_shoulders(const Profile& profile);

/// Factor of square shoulders with fillets on both faces, on the thin section's bending stress.
///
/// C1 + C2 x + C3 x^2 + C4 x^3, x = 2 h/D, h = (D - d)/2, the C from h/r in two ranges.
///
/// @param large_mm   D, thickness on the thick side [mm]
/// @param small_mm   d, on the thin side [mm]
/// @param fillet_mm  r [mm]
/// @throws OutOfRange  h/r outside 0.1 to 20, or a small side that is not smaller
/// @source roark
/// @note   a thick part shorter than 0.8 D/(r/d)^(1/4) concentrates less. Within 6 % of
///         plane-stress models with D/d from 1.2 to 2 and r/d from 0.1 to 1; chart readings of
///         other books differ by up to 8 %
[[nodiscard]] double shoulder_factor(double large_mm, double small_mm, double fillet_mm);

/// Factor of one square shoulder with a fillet, the other face straight: a step of the belly.
///
/// That of a bar with the same shoulder on both faces whose thin part is twice as thick. The twice
/// is ours, fitted against plane-stress models.
///
/// @param large_mm   thickness on the thick side [mm]
/// @param small_mm   on the thin side [mm]
/// @param fillet_mm  [mm]
/// @throws OutOfRange  step outside 0.05 to 2 or fillet outside 0.05 to 1 of the small thickness,
///                     or step over fillet outside 0.1 to 20
/// @source roark
/// @note   within 8 % of plane-stress models; the two-sided formula alone would be up to 18 % low
[[nodiscard]] double one_sided_shoulder_factor(double large_mm, double small_mm, double fillet_mm);

}  // namespace backspring

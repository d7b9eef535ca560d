#pragma once

#include "backspring/steel/elastic.hpp"

namespace backspring {

/// A round pressed along a line on a flat.
struct LineContact {
    double half_width_mm = 0.0;   ///< of the touching strip [mm]
    double peak_mpa = 0.0;        ///< greatest pressure, in the middle; none at a sharp edge [MPa]
    double mean_mpa = 0.0;        ///< force over touching area: pi/4 of the peak [MPa]
    double shear_mpa = 0.0;       ///< greatest shear stress, below the surface [MPa]
    double shear_depth_mm = 0.0;  ///< how far below [mm]
};

/// Modulus that two bodies share in contact: 1/E* = (1 - nu1^2)/E1 + (1 - nu2^2)/E2.
///
/// @returns  [MPa]
/// @source Hertz
[[nodiscard]] double contact_modulus_mpa(const Elastic& one, const Elastic& other);

/// Line contact of a round on a flat.
///
/// a = sqrt(4 F R / (pi L E*)), p0 = 2 F / (pi a L). A sharp edge, R = 0, has no width and an
/// infinite pressure: it peens or wears until it is round. A flat, R infinite, has none.
///
/// @param force_n      [N], >= 0
/// @param length_mm    of the line, the width of spring and tang [mm], > 0
/// @param radius_mm    [mm], >= 0
/// @param modulus_mpa  contact modulus [MPa], > 0
/// @throws InvalidInput  with every broken rule
/// @source Hertz; greatest shear 0.3003 p0 at 0.7861 a
/// @note   both ends of the line carry more; friction brings the greatest shear to the surface
[[nodiscard]] LineContact line_contact(double force_n,
                                       double length_mm,
                                       double radius_mm,
                                       double modulus_mpa);

/// Peak pressure at which a line contact begins to yield below the surface: 1.79 sY (von Mises).
///
/// @param yield_mpa  of the softer body [MPa]
/// @returns          [MPa]
/// @source from memory; the stresses of stress_below give it for nu = 0.3
/// @note   not failure: the first passes work-harden and round the corner, and up to 4 sY/sqrt(3)
///         (2.31 sY, from memory) it then stays elastic without friction
[[nodiscard]] double first_yield_pressure_mpa(double yield_mpa);

/// Smallest radius that keeps the peak pressure at a limit: R = F E* / (pi L p0^2).
///
/// @param force_n      [N], >= 0
/// @param length_mm    [mm], > 0
/// @param modulus_mpa  contact modulus [MPa], > 0
/// @param limit_mpa    peak pressure allowed [MPa], > 0
/// @returns            [mm]
/// @throws InvalidInput  with every broken rule
/// @source Hertz
/// @note   a rounder corner also lifts the spring a little less, so it errs to the safe side
[[nodiscard]] double least_corner_radius_mm(double force_n,
                                            double length_mm,
                                            double modulus_mpa,
                                            double limit_mpa);

/// Gap between the hardness of tang and spring beyond which rubbing parts are said to gall [HRC].
///
/// @source common practice, no source
inline constexpr double kGallingGapHrc = 5.0;

/// Whether the hardness of tang and spring is so far apart that they are said to gall.
///
/// @source common practice, no source: told of stainless parts
[[nodiscard]] bool galling_caution(double tang_hrc, double spring_hrc);

}  // namespace backspring

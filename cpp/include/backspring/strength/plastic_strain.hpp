#pragma once

#include "backspring/core/band.hpp"

namespace backspring {

/// Plastic strain at a notch that yields in a small place, from the stress it would carry elastic.
///
/// s^2/(E Sy) - Sy/E: stress times strain is as if elastic, and the stress stays at yield.
///
/// @param local_mpa  elastic stress at the notch's root [MPa]
/// @returns          0 up to the yield stress
/// @source neuber-1961
[[nodiscard]] double notch_plastic_strain(double local_mpa,
                                          double yield_mpa,
                                          double youngs_modulus_mpa);

/// Greatest plastic strain that a fold adds where the section yields right through.
///
/// 1.75 q t/(t - c): the ligaments beside a hole draw out over a length of their own depth. The
/// 1.75 is ours, fitted against plane-stress models of hardening steel.
///
/// @param turn_rad      lasting turn of the fold q [rad]
/// @param thickness_mm  t [mm]
/// @param chord_mm      taken away by the hole c, 0 without one [mm]
/// @source derived
/// @note   at a hole, added to what the notch has when the fold begins, within a quarter of three
///         models (two diameters, two depths of fold)
[[nodiscard]] double fold_plastic_strain(double turn_rad, double thickness_mm, double chord_mm);

/// Elongation at break of spring steel hardened and tempered to a tensile strength.
///
/// Straight between rows of 5160 bars: 20 % at 896 MPa, 12 % at 1165, 10 % at 1606, 9 % at 2000
/// and 4 % at 2220, level outside. The low end, half of it, is that of a quenched and tempered
/// 1090 bar (6 % at 1340 MPa); the high end, a fifth more, that of 1340 steel.
///
/// @param tensile_mpa  [MPa], > 0
/// @returns            a share of the length
/// @source asm-5160 (from memory), asm-1090-bar, efunda-1340
/// @note   over a gauge of several diameters: in the neck, and in a bend, steel bears more
[[nodiscard]] Band elongation(double tensile_mpa);

}  // namespace backspring

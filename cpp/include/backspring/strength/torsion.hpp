#pragma once

#include "backspring/spring/spring.hpp"

namespace backspring {

/// Torsion constant J of a rectangle; a bar under torque T twists by T/(G J) per length.
///
/// J = a b^3/3 [1 - 192/pi^5 (b/a) sum over odd n of tanh(n pi a/(2 b))/n^5], a the longer side.
///
/// @param width_mm      one side [mm], > 0
/// @param thickness_mm  the other [mm], > 0
/// @returns             [mm^4]
/// @throws InvalidInput  a side not above 0
/// @source timoshenko-goodier, art. 109
[[nodiscard]] double torsion_constant_mm4(double width_mm, double thickness_mm);

/// How far the spring twists between its middle pin and a station, per torque about its length.
///
/// The integral of ds/(G J(s)) by quadrature: exact but for rounding on straight tapers.
///
/// @param to_mm  station ahead of the middle pin [mm], > 0
/// @returns      [rad/(N mm)]
/// @source Saint-Venant
/// @note  a section with a hole counts as a rectangle of what steel is left; the grip of pin and
///        liners, which keeps the sections next to the middle pin from warping, is left out
[[nodiscard]] double twist_rad_per_nmm(const Spring& spring, double to_mm);

}  // namespace backspring

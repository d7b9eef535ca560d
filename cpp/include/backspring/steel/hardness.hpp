#pragma once

#include "backspring/core/band.hpp"

namespace backspring {

/// Vickers hardness from Rockwell C.
///
/// @param hardness_hrc  20 to 68
/// @returns             HV
/// @throws OutOfRange   outside the table
/// @source astm-e140
[[nodiscard]] double vickers_hv(double hardness_hrc);

/// Tensile strength from Rockwell C by the American table.
///
/// @param hardness_hrc  35 to 59
/// @returns             [MPa]
/// @throws OutOfRange   outside the table
/// @source astm-e140
[[nodiscard]] double tensile_astm_mpa(double hardness_hrc);

/// Tensile strength from Rockwell C by the German table.
///
/// @param hardness_hrc  20.3 to 57.8
/// @returns             [MPa]
/// @throws OutOfRange   outside the table
/// @source din-50150
[[nodiscard]] double tensile_din_mpa(double hardness_hrc);

/// Tensile strength from Rockwell C with its band: both tables, which part by 3 to 6 % at 48 to 55
/// HRC.
///
/// The value is the mean of the two, the band reaches from the lower to the higher.
///
/// @param hardness_hrc  35 to 57.8, where both tables have rows
/// @returns             [MPa]
/// @throws OutOfRange   outside either table
/// @source astm-e140, din-50150
[[nodiscard]] Band tensile_mpa(double hardness_hrc);

}  // namespace backspring

#pragma once

#include "backspring/core/band.hpp"

namespace backspring {

/// What the steel carries at its temper.
struct Strength {
    Band yield_mpa;    ///< 0.2 % proof stress [MPa]
    Band tensile_mpa;  ///< tensile strength [MPa]
};

/// Strength from hardness and the steel's ratio of yield to tensile strength.
///
/// yield = ratio x tensile, each end of the band with its own end of the ratio's band.
///
/// @param hardness_hrc  Rockwell C, 35 to 57.8
/// @param yield_ratio   0.2 % proof over tensile strength, with its band
/// @throws OutOfRange   hardness outside the conversion tables
/// @source astm-e140, din-50150
[[nodiscard]] Strength strength_from_hardness(double hardness_hrc, const Band& yield_ratio);

}  // namespace backspring

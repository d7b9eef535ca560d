#pragma once

#include "backspring/design/design.hpp"

namespace backspring {

/// First and last station of a spring's steel.
struct SteelEnds {
    double rear_mm = 0.0;   ///< behind all pins and pads [mm]
    double front_mm = 0.0;  ///< ahead of them [mm]
};

/// As far as pins, the pads of all blades and the stations of the thickness reach.
[[nodiscard]] SteelEnds steel_ends(const Design& design);

/// Where the pads of the own end begin, and those of the other end: the belly lies between.
///
/// @returns  without a blade at the other end, the rearmost steel
[[nodiscard]] SteelEnds belly_ends(const Design& design);

}  // namespace backspring

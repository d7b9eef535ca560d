#pragma once

#include "backspring/action/turns.hpp"

namespace backspring {

/// Least and greatest stress at one place over a travel.
struct StressRange {
    double low_mpa = 0.0;   ///< [MPa]
    double high_mpa = 0.0;  ///< [MPa]
};

/// Range of the bending stress on the belly, the side in tension, at one station.
///
/// @param station_mm  [mm]
/// @returns           a low of 0 where the tang lets go
[[nodiscard]] StressRange stress_range(const Spring& spring,
                                       const Turns& travel,
                                       double station_mm);

}  // namespace backspring

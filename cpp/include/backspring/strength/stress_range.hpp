#pragma once

#include <span>

#include "backspring/action/sweep.hpp"

namespace backspring {

/// Least and greatest stress at one place over a travel.
struct StressRange {
    double low_mpa = 0.0;   ///< [MPa]
    double high_mpa = 0.0;  ///< [MPa]
};

/// Range of the bending stress on the belly, the side in tension, at one station.
///
/// @param steps       a sweep over the travel
/// @param station_mm  [mm]
/// @returns           zeros for no steps; a low of 0 where the tang lets go
/// @note  the greatest stress is that of the steps: 0.1 % below the true peak at one degree
[[nodiscard]] StressRange stress_range(const Spring& spring,
                                       std::span<const Step> steps,
                                       double station_mm);

}  // namespace backspring

#pragma once

#include <map>

#include "backspring/action/travel_forces.hpp"

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

/// The same at one station after another of a spring, each worked out once.
class StressRanges {
  public:
    /// @param spring, travel  outlive this
    StressRanges(const Spring& spring, const Turns& travel)
        : spring_(&spring), travel_(&travel), forces_(travel) {}

    [[nodiscard]] StressRange at(double station_mm);

  private:
    [[nodiscard]] StressRange work_out(double station_mm) const;

    const Spring* spring_;
    const Turns* travel_;
    TravelForces forces_;
    std::map<double, StressRange> known_;
};

}  // namespace backspring

#pragma once

#include "backspring/check/two_blades.hpp"

namespace backspring::detail {

/// Where the stress of a spring with two blades can peak, found once.
struct WholeSpring {
    StressProbe first;           ///< from the first blade's pin on
    StressProbe second;          ///< from the second blade's pin on
    StressProbe between;         ///< between two pins, seen from the first blade's
    StressProbe between_turned;  ///< the same, seen from the second blade's
    double span_mm = 0.0;        ///< between the pins, 0 for one [mm]
};

[[nodiscard]] WholeSpring make_whole_spring(const TwoBlades& two);

/// Largest nominal bending stress along the whole spring; station as the first blade counts.
[[nodiscard]] PeakStress peak_stress(const WholeSpring& whole, const TwoContacts& both);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

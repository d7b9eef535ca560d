#pragma once

#include <optional>

#include "backspring/spring/bending.hpp"
#include "backspring/spring/flexibility.hpp"

namespace backspring::detail {

/// A whole stretch as the probe keeps it.
[[nodiscard]] StressProbe::Taper taper_of(const Stretch& stretch, double width_mm);

/// Where 6 M/(b t^2) peaks between the ends of a taper whose moment runs in a straight line.
///
/// @param zero_mm  station at which the moment vanishes
/// @returns        nothing where the worst place is an end
[[nodiscard]] std::optional<StressProbe::Place> taper_peak(const StressProbe::Taper& piece,
                                                           double zero_mm);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include <vector>

#include "backspring/spring/flexibility.hpp"

namespace backspring {

/// Cuts a span of the spring where a station, a step or a hole begins, peaks or ends.
///
/// The integrals of the stretches are left at nothing.
[[nodiscard]] std::vector<Stretch> cut_into_stretches(const Spring& spring,
                                                      double from_mm,
                                                      double to_mm);

/// Thickness inside a stretch.
[[nodiscard]] inline double thickness_mm(const Stretch& stretch, double x_mm) {
    return stretch.thickness_mm + stretch.taper * (x_mm - stretch.start_mm);
}

}  // namespace backspring

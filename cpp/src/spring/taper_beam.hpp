#pragma once

#include <span>

#include "backspring/spring/flexibility.hpp"

namespace backspring::detail {

/// A stretch of one width without a hole as a beam built in at its start: what a unit force does at
/// its own place x, (1/E b) int (x - s)^2 12/t^3 ds and shear; twice and once derived.
[[nodiscard]] OwnCompliance own_of_taper(const Stretch& stretch,
                                         double x_mm,
                                         double bending_factor,
                                         double shear_factor);

/// The same at several stations at once; false where its taper is too steep for that.
[[nodiscard]] bool owns_of_taper(const Stretch& stretch,
                                 std::span<const double> x_mm,
                                 double bending_factor,
                                 double shear_factor,
                                 OwnCompliances& own);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

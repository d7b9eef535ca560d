#pragma once

#include "backspring/spring/flexibility.hpp"

namespace backspring::detail {

/// Integrals over one stretch from its start to x, distances measured from the start, E b and
/// kappa G b left out: of 12/t^3 and its moments for bending, of 1/t for shear, net of a hole.
///
/// Straight faces: closed form, kept exact for the slightest taper. Width that varies:
/// Gauss-Legendre. Pierced: likewise in the angle round the hole, where the integrand is smooth.
[[nodiscard]] BendingIntegrals shape_integrals(const Stretch& stretch, double x_mm);

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

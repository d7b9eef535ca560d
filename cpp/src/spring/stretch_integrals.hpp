#pragma once

#include "backspring/spring/flexibility.hpp"

namespace backspring::detail {

/// Integrals over one stretch from its start to x, distances measured from the start, E b and
/// kappa G b left out: of 12/t^3 and its moments for bending, of 1/t for shear, net of a hole.
///
/// Straight faces: closed form, kept exact for the slightest taper. Width that varies:
/// Gauss-Legendre. Pierced: likewise in the angle round the hole, where the integrand is smooth.
[[nodiscard]] BendingIntegrals shape_integrals(const Stretch& stretch, double x_mm);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include <functional>
#include <vector>

#include "backspring/spring/spring.hpp"

namespace backspring::detail {

/// How flexibility answers to a thin layer ground off one side, per mm taken off.
struct Thinned {
    double bending = 0.0;  ///< d(1/(E I)) [1/(N mm3)]
    double shear = 0.0;    ///< d(1/(kappa G A)) [1/(N mm)]
};

/// How the layer changes the flexibility of the net section.
///
/// Where a hole passes the mid-line moves by half of what is taken off, so the hole's distance from
/// it changes: I = b [(t^3 - c^3)/12 - c e^2 t/(t - c)].
///
/// @param offset_rate  of the hole from the mid-line per mm taken off: +0.5 back, -0.5 belly
[[nodiscard]] Thinned thinned_at(const Spring& spring, double x_mm, double offset_rate);

/// How the outer-fibre stress per moment rises per mm taken off.
///
/// On a hole on the mid-line both fibres are alike: the one that gets worse counts.
[[nodiscard]] double stress_thinned_at(const Spring& spring, double x_mm, double offset_rate);

/// Visits quadrature points of a span: station, length it stands for, what thinning does there.
///
/// @param cuts_mm  stations at which the integrand breaks, besides those of the spring
void visit_thinned(const Spring& spring,
                   std::vector<double> cuts_mm,
                   double offset_rate,
                   const std::function<void(double x_mm, double length_mm, Thinned)>& visit);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

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

/// Width inside a stretch, as a share of the spring's own.
[[nodiscard]] inline double width_share(const Stretch& stretch, double x_mm) {
    return stretch.width_share + stretch.width_taper * (x_mm - stretch.start_mm);
}

/// Net section inside a stretch, square to the mid-line, of unit width.
[[nodiscard]] Section unit_section(const Stretch& stretch, double x_mm);

/// Depth of a straight section of the spring's own width that shears as much.
[[nodiscard]] inline double shear_depth_mm(const Stretch& stretch, double x_mm) {
    double steel = thickness_mm(stretch, x_mm) * stretch.cosine;
    if (stretch.hole.diameter_mm > 0.0) steel -= chord_mm(stretch.hole, x_mm);
    return steel * width_share(stretch, x_mm) / (stretch.cosine * (1.0 + stretch.axial_share));
}

/// How fast the integrals grow with x, E b and kappa G b left out.
struct UnitRates {
    double bending;  ///< 1/(I cos) [1/mm3]
    double shear;    ///< 1/(depth that shears as much) [1/mm]
};

[[nodiscard]] UnitRates unit_rates(const Stretch& stretch, double x_mm);

}  // namespace backspring

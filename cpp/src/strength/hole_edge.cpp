#include "backspring/strength/hole_edge.hpp"

#include <cmath>

#include "backspring/spring/section.hpp"
#include "within.hpp"

namespace backspring {
namespace {

constexpr double kLargestHole = 0.75;
constexpr double kLeastLigament = 0.1;

}  // namespace

double hole_tension_factor(double diameter_ratio) {
    const double x = diameter_ratio;
    require_within("hole diameter over depth", x, 0.0, 1.0);
    return 3.0 + x * (-3.13 + x * (3.66 - 1.53 * x));
}

LocalStress hole_edge_stress(double thickness_mm,
                             double width_mm,
                             const Hole& hole,
                             double moment_nmm) {
    const double t = thickness_mm, radius = 0.5 * hole.diameter_mm;
    const double to_face = 0.5 * t - std::abs(hole.offset_mm);
    require_within("hole diameter over thickness", hole.diameter_mm / t, 0.0, kLargestHole);
    require_within("metal between hole and near face over thickness", (to_face - radius) / t,
                   kLeastLigament, 0.5);
    const Section net = make_section(width_mm, t, hole.diameter_mm, hole.offset_mm);
    const double slope = -moment_nmm / net.inertia_mm4;  // stress per mm towards the back
    const double centroid = 0.5 * t - net.back_mm;
    const double at_center = slope * (hole.offset_mm - centroid);
    // The near edge adds to the stress at the centre; on the mid-line the tension side is taken.
    const double side =
        hole.offset_mm != 0.0 ? std::copysign(1.0, hole.offset_mm) : std::copysign(1.0, slope);
    const double rise = side * slope * radius;
    const double nominal = at_center + rise;
    const double local = hole_tension_factor(radius / to_face) * at_center + 2.0 * rise;
    const double factor = nominal != 0.0 ? local / nominal : 2.0;
    return {nominal, factor, local, hole.center_mm};
}

}  // namespace backspring

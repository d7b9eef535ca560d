#include "backspring/spring/section.hpp"

#include <algorithm>

namespace backspring {

Section make_section(double width_mm, double thickness_mm, double chord_mm, double offset_mm) {
    const double b = width_mm, t = thickness_mm, c = chord_mm, e = offset_mm;
    const double area = b * (t - c);
    const double ybar = -b * c * e / area;
    const double whole = b * t * t * t / 12.0 + b * t * ybar * ybar;
    const double slot = b * c * c * c / 12.0 + b * c * (e - ybar) * (e - ybar);
    return {.area_mm2 = area,
            .inertia_mm4 = whole - slot,
            .back_mm = 0.5 * t - ybar,
            .belly_mm = 0.5 * t + ybar};
}

double outer_stress_per_moment(const Section& section) {
    return std::max(section.back_mm, section.belly_mm) / section.inertia_mm4;
}

}  // namespace backspring

#include "backspring/spring/bending.hpp"

#include <algorithm>
#include <cmath>

namespace backspring {

double bending_moment_nmm(const Spring& spring, std::span<const Load> loads, double x_mm) {
    const bool pinned = spring.support.kind == SupportKind::two_pins;
    const double rear_mm = pinned ? -spring.support.rear_pin_mm : 0.0;
    double ahead = 0.0, behind = 0.0;
    for (const Load& load : loads) {
        ahead += load.force_n * std::max(load.x_mm - std::max(x_mm, 0.0), 0.0);
        if (load.x_mm < rear_mm) {
            behind += load.force_n * std::max(std::min(x_mm, rear_mm) - load.x_mm, 0.0);
        }
    }
    if (x_mm >= 0.0) return ahead;
    const double share = pinned ? std::max(1.0 + x_mm / spring.support.rear_pin_mm, 0.0) : 0.0;
    return share * ahead + (1.0 - share) * behind;
}

PinForces pin_forces(const Spring& spring, std::span<const Load> loads) {
    const double span = spring.support.rear_pin_mm;
    double ahead = 0.0, behind = 0.0;
    for (const Load& load : loads) (load.x_mm < 0.0 ? behind : ahead) += load.force_n;
    const double couple =
        (bending_moment_nmm(spring, loads, 0.0) - bending_moment_nmm(spring, loads, -span)) / span;
    return {.middle_n = ahead + couple, .rear_n = couple - behind};
}

FibreStress fibre_stress(const Spring& spring, std::span<const Load> loads, double x_mm) {
    const Section section = section_at(spring, x_mm);
    const double per_mm = bending_moment_nmm(spring, loads, x_mm) / section.inertia_mm4;
    return {.back_mpa = -per_mm * section.back_mm, .belly_mpa = per_mm * section.belly_mm};
}

}  // namespace backspring

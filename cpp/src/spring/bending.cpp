#include "backspring/spring/bending.hpp"

#include <algorithm>
#include <cmath>

namespace backspring {

double bending_moment_nmm(const Spring& spring, std::span<const Load> loads, double x_mm) {
    const bool behind = x_mm < 0.0;
    double moment = 0.0;
    for (const Load& load : loads) {
        moment += load.force_n * std::max(load.x_mm - std::max(x_mm, 0.0), 0.0);
    }
    if (!behind) return moment;
    if (spring.support.kind != SupportKind::two_pins) return 0.0;
    return moment * std::max(1.0 + x_mm / spring.support.rear_pin_mm, 0.0);
}

PinForces pin_forces(const Spring& spring, std::span<const Load> loads) {
    double total = 0.0;
    for (const Load& load : loads) total += load.force_n;
    const double rear = bending_moment_nmm(spring, loads, 0.0) / spring.support.rear_pin_mm;
    return {.middle_n = total + rear, .rear_n = rear};
}

FibreStress fibre_stress(const Spring& spring, std::span<const Load> loads, double x_mm) {
    const Section section = section_at(spring, x_mm);
    const double per_mm = bending_moment_nmm(spring, loads, x_mm) / section.inertia_mm4;
    return {.back_mpa = -per_mm * section.back_mm, .belly_mpa = per_mm * section.belly_mm};
}

}  // namespace backspring

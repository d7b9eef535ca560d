#include "backspring/action/snap.hpp"

#include <cmath>

namespace backspring {

std::optional<double> inertia_kg_mm2(const BladeBody& blade, const Tang& tang) {
    if (blade.inertia_kg_mm2) return blade.inertia_kg_mm2;
    if (!blade.mass_g || !blade.length_mm || !blade.height_mm) return std::nullopt;
    const double length = *blade.length_mm, height = *blade.height_mm;
    const double from_middle = 0.5 * length - rear_reach_mm(tang);
    const double mass_kg = *blade.mass_g / 1000.0;
    return mass_kg * ((length * length + height * height) / 12.0 + from_middle * from_middle);
}

double angular_speed_rad_per_s(double energy_mj, double inertia_kg_mm2) {
    constexpr double mj_per_kg_mm2 = 1000.0;  // 1 mJ / (kg mm2) = 1000 / s2
    return std::sqrt(2.0 * energy_mj / inertia_kg_mm2 * mj_per_kg_mm2);
}

}  // namespace backspring

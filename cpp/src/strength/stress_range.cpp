#include "backspring/strength/stress_range.hpp"

#include <algorithm>

namespace backspring {

StressRange stress_range(const Spring& spring, std::span<const Step> steps, double station_mm) {
    if (steps.empty()) return {};
    const Section section = section_at(spring, station_mm);
    const double per_moment = section.belly_mm / section.inertia_mm4;
    const auto stress = [&](const Step& step) {
        const Contact& contact = step.turn.contact;
        const auto forces = loads(contact);
        return per_moment * bending_moment_nmm(spring, forces, station_mm);
    };
    StressRange range{stress(steps.front()), stress(steps.front())};
    for (const Step& step : steps.subspan(1)) {
        const double here = stress(step);
        range.low_mpa = std::min(range.low_mpa, here);
        range.high_mpa = std::max(range.high_mpa, here);
    }
    return range;
}

}  // namespace backspring

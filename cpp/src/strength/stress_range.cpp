#include "backspring/strength/stress_range.hpp"

namespace backspring {

StressRange stress_range(const Spring& spring, const Turns& travel, double station_mm) {
    const Section section = section_at(spring, station_mm);
    const double per_moment = section.belly_mm / section.inertia_mm4;
    const auto stress = [&](const Turn& turn) {
        return per_moment * bending_moment_nmm(spring, loads(turn.contact), station_mm);
    };
    const auto less = [&](const Turn& turn) { return -stress(turn); };
    return {stress(largest(travel, less)), stress(largest(travel, stress))};
}

}  // namespace backspring

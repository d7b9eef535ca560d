#include "backspring/strength/stress_range.hpp"

#include <algorithm>

namespace backspring {

namespace {

double moment_nmm(const Spring& spring, const Contact& contact, double station_mm) {
    return station_mm < 0.0 ? bending_moment_nmm(spring, loads(contact), station_mm)
                            : moment_ahead_nmm(contact, station_mm);
}

}  // namespace

StressRange stress_range(const Spring& spring, const Turns& travel, double station_mm) {
    const Section section = section_at(spring, station_mm);
    const double per_moment = section.belly_mm / section.inertia_mm4;
    const auto stress = [&](const Turn& turn) {
        return per_moment * moment_nmm(spring, turn.contact, station_mm);
    };
    const auto less = [&](const Turn& turn) { return -stress(turn); };
    return {stress(largest(travel, less)), stress(largest(travel, stress))};
}

StressRange StressRanges::at(double station_mm) {
    const auto known = known_.find(station_mm);
    if (known != known_.end()) return known->second;
    return known_[station_mm] = stress_range(*spring_, *travel_, station_mm);
}

}  // namespace backspring

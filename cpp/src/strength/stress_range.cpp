#include "backspring/strength/stress_range.hpp"

#include <algorithm>

namespace backspring {

namespace {

double moment_nmm(const Spring& spring, const Contact& contact, double station_mm) {
    return station_mm < 0.0 ? bending_moment_nmm(spring, loads(contact), station_mm)
                            : moment_ahead_nmm(contact, station_mm);
}

/// The same by force and moment about the pin of a blade that bears ahead of the station.
ForceShares moment_shares(const Spring& spring, double station_mm) {
    if (station_mm >= 0.0) return {-station_mm, 1.0};
    if (spring.support.kind != SupportKind::two_pins) return {0.0, 0.0};
    return {0.0, std::max(1.0 + station_mm / spring.support.rear_pin_mm, 0.0)};
}

}  // namespace

StressRange stress_range(const Spring& spring, const Turns& travel, double station_mm) {
    return StressRanges(spring, travel).at(station_mm);
}

StressRange StressRanges::at(double station_mm) {
    const auto known = known_.find(station_mm);
    if (known != known_.end()) return known->second;
    return known_[station_mm] = work_out(station_mm);
}

StressRange StressRanges::work_out(double station_mm) const {
    const Section section = section_at(*spring_, station_mm);
    const double per_moment = section.belly_mm / section.inertia_mm4;
    if (forces_.tells_at(station_mm)) {
        const auto [per_n, per_nmm] = moment_shares(*spring_, station_mm);
        const ForceShares more{per_moment * per_n, per_moment * per_nmm};
        const double least = forces_.largest({-more.per_n, -more.per_nmm}).value;
        return {least == 0.0 ? 0.0 : -least, forces_.largest(more).value};
    }
    const auto stress = [&](const Turn& turn) {
        return per_moment * moment_nmm(*spring_, turn.contact, station_mm);
    };
    const auto less = [&](const Turn& turn) { return -stress(turn); };
    return {stress(largest(*travel_, less)), stress(largest(*travel_, stress))};
}

}  // namespace backspring

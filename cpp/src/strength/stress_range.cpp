#include "backspring/strength/stress_range.hpp"

#include <algorithm>

namespace backspring {

namespace {

/// As bending_moment_nmm() of all a contact's forces; nearly always one blade's.
double moment_nmm(const Spring& spring, const Contact& contact, double station_mm) {
    const bool alone = contact.others.beside.empty() && contact.others.far.empty();
    if (!alone || station_mm < 0.0) return bending_moment_nmm(spring, loads(contact), station_mm);
    double moment = 0.0;
    for (const Touch& touch : contact.all()) {
        moment += touch.force_n * std::max(touch.x_mm - station_mm, 0.0);
    }
    return moment;
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

}  // namespace backspring

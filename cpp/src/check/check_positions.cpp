#include "backspring/strength/yielding.hpp"
#include "check_parts.hpp"

namespace backspring {

Position detail::make_position(const Design& design,
                               const std::string& name,
                               const Contact& contact,
                               const PeakStress& peak) {
    Position position;
    position.name = name;
    position.blade_angle_deg = contact.blade_angle_deg;
    position.force_n = contact.force_n;
    for (const Touch& touch : contact.all()) {
        position.contacts_mm.push_back(touch.x_mm - design.own().tang.pivot_mm);
    }
    position.energy_mj = contact.energy_nmm;
    position.torque_nmm = contact.torque_nmm;
    position.peak_stress_mpa = peak.stress_mpa;
    position.peak_stress_station_mm = peak.station_mm;
    if (const auto margin = yield_margin(design.strength.yield_mpa, peak.stress_mpa)) {
        position.yield_margin = margin->value;
        position.yield_margin_low = margin->low;
    }
    return position;
}

std::vector<Position> detail::make_positions(Solution& solution,
                                             const std::optional<StopBand>& band) {
    std::vector<Position> positions;
    const auto push = [&](const char* name, const Contact& contact) {
        positions.push_back(make_position(solution.design(), name, contact,
                                          peak_stress(solution.action(), contact)));
    };
    push("open", solution.rests().open);
    positions.back().reading_loaded_mm = solution.readings().open_mm;
    positions.back().reading_unloaded_mm = 0.0;
    const auto add = [&](const char* name, const std::optional<Contact>& rest,
                         std::optional<double> Readings::*reading) {
        if (!rest) return;
        push(name, *rest);
        Position& made = positions.back();
        made.reading_loaded_mm = *(solution.readings().*reading);
        if (band) {
            made.reading_loaded_low_mm = made.reading_loaded_mm + band->reading_mm.low;
            made.reading_loaded_high_mm = made.reading_loaded_mm + band->reading_mm.high;
        }
        positions.back().reading_unloaded_mm = solution.unloaded_readings().*reading;
    };
    add("half_stop", solution.rests().half_stop, &Readings::half_stop_mm);
    add("closed", solution.rests().closed, &Readings::closed_mm);
    return positions;
}

}  // namespace backspring

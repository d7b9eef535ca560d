#include "backspring/action/reading.hpp"
#include "backspring/strength/yielding.hpp"
#include "check_parts.hpp"

namespace backspring {

Position make_position(const Design& design,
                       const std::string& name,
                       const Contact& contact,
                       const PeakStress& peak) {
    Position position;
    position.name = name;
    position.blade_angle_deg = contact.blade_angle_deg;
    position.force_n = contact.force_n;
    for (const Touch& touch : contact.all()) {
        position.contacts_mm.push_back(touch.x_mm - design.tang.pivot_mm);
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

std::vector<Position> make_positions(const Design& design,
                                     const Action& action,
                                     const Rests& loaded) {
    const bool half_stop = design.tang.half_stop_mm.has_value();
    const Joint unloaded = make_unloaded_joint(design.spring, design.tang, design.fit);
    const Readings with_pins = readings(action.joint, loaded);
    const Readings rear_out = readings(unloaded, find_rests(unloaded, half_stop));

    std::vector<Position> positions;
    const auto push = [&](const char* name, const Contact& contact) {
        positions.push_back(make_position(design, name, contact, peak_stress(action, contact)));
    };
    push("open", loaded.open);
    positions.back().reading_unloaded_mm = 0.0;
    const auto add = [&](const char* name, const std::optional<Contact>& rest,
                         const std::optional<double>& reading_loaded,
                         const std::optional<double>& reading_unloaded) {
        if (!rest) return;
        push(name, *rest);
        positions.back().reading_loaded_mm = *reading_loaded;
        positions.back().reading_unloaded_mm = reading_unloaded;
    };
    add("half_stop", loaded.half_stop, with_pins.half_stop_mm, rear_out.half_stop_mm);
    add("closed", loaded.closed, with_pins.closed_mm, rear_out.closed_mm);
    return positions;
}

}  // namespace backspring

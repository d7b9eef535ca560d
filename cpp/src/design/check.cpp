#include "backspring/design/check.hpp"

#include <algorithm>

#include "../core/root.hpp"
#include "backspring/action/reading.hpp"
#include "backspring/core/require.hpp"
#include "backspring/design/look.hpp"
#include "backspring/strength/yielding.hpp"
#include "notices.hpp"

namespace backspring {
namespace {

Position make_position(const Design& design,
                       const Action& action,
                       const std::string& name,
                       const Contact& contact) {
    const PeakStress peak = peak_stress(action, contact);
    Position position;
    position.name = name;
    position.blade_angle_deg = contact.blade_angle_deg;
    position.force_n = contact.force_n;
    for (const Touch& touch : contact.all()) {
        position.contacts_mm.push_back(touch.x_mm - action.joint.pivot_mm);
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
    positions.push_back(make_position(design, action, "open", loaded.open));
    positions.back().reading_unloaded_mm = 0.0;
    const auto add = [&](const char* name, const std::optional<Contact>& rest,
                         const std::optional<double>& reading_loaded,
                         const std::optional<double>& reading_unloaded) {
        if (!rest) return;
        positions.push_back(make_position(design, action, name, *rest));
        positions.back().reading_loaded_mm = *reading_loaded;
        positions.back().reading_unloaded_mm = reading_unloaded;
    };
    add("half_stop", loaded.half_stop, with_pins.half_stop_mm, rear_out.half_stop_mm);
    add("closed", loaded.closed, with_pins.closed_mm, rear_out.closed_mm);
    return positions;
}

StrokeReport make_report(const Design& design,
                         const std::string& from,
                         const std::string& to,
                         const Stroke& stroke) {
    StrokeReport report;
    report.from_position = from;
    report.to_position = to;
    report.stroke = stroke;
    if (const auto& nick = design.blade.nail_nick_mm) {
        report.start_pull_n = report.stroke.start_torque_nmm / *nick;
        report.peak_pull_n = report.stroke.peak_torque_nmm / *nick;
        report.closing_start_pull_n = report.stroke.closing_start_torque_nmm / *nick;
        report.closing_peak_pull_n = report.stroke.closing_peak_torque_nmm / *nick;
    }
    if (const auto inertia = inertia_kg_mm2(design.blade, design.tang)) {
        const double speed = angular_speed_rad_per_s(report.stroke.snap_energy_mj, *inertia);
        report.snap_speed_rad_per_s = speed;
        if (design.blade.length_mm) {
            const double tip_mm = *design.blade.length_mm - rear_reach_mm(design.tang);
            report.tip_speed_m_per_s = speed * tip_mm / 1000.0;
        }
    }
    return report;
}

std::vector<StrokeReport> make_strokes(const Design& design,
                                       const Action& action,
                                       const std::vector<Step>& steps,
                                       const Rests& rests) {
    std::vector<StrokeReport> reports;
    if (!rests.closed || rests.open.torque_nmm >= 0.0) return reports;
    const auto add = [&](const char* from, const Contact& a, const char* to, const Contact& b) {
        if (const auto stroke = make_stroke(action, steps, a, b)) {
            reports.push_back(make_report(design, from, to, *stroke));
        }
    };
    if (rests.half_stop) {
        add("closed", *rests.closed, "half_stop", *rests.half_stop);
        add("half_stop", *rests.half_stop, "open", rests.open);
    } else {
        add("closed", *rests.closed, "open", rests.open);
    }
    return reports;
}

/// The contact where a quantity is largest: at a step, or between its neighbours.
///
/// @param known  the quantity as a step holds it
/// @param value  the same quantity of any contact
template <class Known, class Value>
Contact worst(const Action& action, const std::vector<Step>& steps, Known known, Value value) {
    const auto less = [&](const Step& a, const Step& b) { return known(a) < known(b); };
    const auto top = std::max_element(steps.begin(), steps.end(), less);
    const auto angle = [](auto step) { return step->turn.contact.blade_angle_deg; };
    const double low = angle(top == steps.begin() ? top : top - 1);
    const double high = angle(top + 1 == steps.end() ? top : top + 1);
    const auto at = [&](double a) { return value(contact_at(action.joint, a)); };
    const Contact best = contact_at(action.joint, find_maximum(at, low, high));
    return value(best) > known(*top) ? best : top->turn.contact;
}

Travel make_travel(const Design& design, const Action& action, const std::vector<Step>& steps) {
    const Contact force = worst(
        action, steps, [](const Step& s) { return s.turn.contact.force_n; },
        [](const Contact& c) { return c.force_n; });
    const Contact stress = worst(
        action, steps, [](const Step& s) { return s.peak.stress_mpa; },
        [&](const Contact& c) { return peak_stress(action, c).stress_mpa; });
    const PeakStress peak = peak_stress(action, stress);
    Travel travel;
    travel.peak_force_n = force.force_n;
    travel.peak_force_angle_deg = force.blade_angle_deg;
    travel.peak_stress_mpa = peak.stress_mpa;
    travel.peak_stress_angle_deg = stress.blade_angle_deg;
    travel.peak_stress_station_mm = peak.station_mm;
    if (const auto margin = yield_margin(design.strength.yield_mpa, travel.peak_stress_mpa)) {
        travel.yield_margin = margin->value;
        travel.yield_margin_low = margin->low;
        travel.yield_margin_high = margin->high;
    }
    return travel;
}

}  // namespace

const Position* Check::position(const std::string& name) const {
    const auto found = std::find_if(positions.begin(), positions.end(),
                                    [&](const Position& p) { return p.name == name; });
    return found == positions.end() ? nullptr : &*found;
}

Check check(const Design& design, double step_deg) {
    Requirements rules;
    rules.in_range("step_deg", step_deg, 0.05, 5.0, "deg");
    rules.throw_if_any();
    const Action action = make_action(design);
    const Rests rests = find_rests(action.joint, design.tang.half_stop_mm.has_value());
    const double start = rests.closed ? rests.closed->blade_angle_deg : 0.0;
    const std::vector<Step> steps = sweep(action, start, 180.0, step_deg);

    Check result;
    result.positions = make_positions(design, action, rests);
    result.strokes = make_strokes(design, action, steps, rests);
    result.travel = make_travel(design, action, steps);
    const double pivot = design.tang.pivot_mm;
    result.stiffness_n_per_mm = 1.0 / deflection_per_force(action.joint.flexibility, pivot, pivot);
    result.targets = judge(design.targets, result);
    result.notices = find_notices(design, action.joint, result);
    return result;
}

}  // namespace backspring

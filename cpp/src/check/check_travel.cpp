#include <algorithm>

#include "backspring/core/root.hpp"
#include "backspring/strength/yielding.hpp"
#include "check_parts.hpp"

namespace backspring {
namespace {

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

}  // namespace

Travel make_travel(const Design& design,
                   const Contact& force,
                   const Contact& stress,
                   const PeakStress& peak) {
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

Contact strongest(const Action& action, const std::vector<Step>& steps) {
    return worst(
        action, steps, [](const Step& s) { return s.turn.contact.force_n; },
        [](const Contact& c) { return c.force_n; });
}

Contact most_stressed(const Action& action, const std::vector<Step>& steps) {
    return worst(
        action, steps, [](const Step& s) { return s.peak.stress_mpa; },
        [&](const Contact& c) { return peak_stress(action, c).stress_mpa; });
}

}  // namespace backspring

#include "backspring/action/stroke.hpp"

namespace backspring {

std::optional<Stroke> make_stroke(LazyStroke& way) {
    const std::optional<Turn>& crest = way.crest();
    if (!crest) return std::nullopt;
    const double crest_energy = crest->contact.energy_nmm;
    Stroke stroke;
    stroke.from_deg = way.from().contact.blade_angle_deg;
    stroke.to_deg = way.to().contact.blade_angle_deg;
    stroke.start_torque_nmm = way.from().opening_nmm();
    stroke.peak_torque_nmm = way.opening_peak().opening_nmm();
    stroke.peak_torque_angle_deg = way.opening_peak().contact.blade_angle_deg;
    stroke.crest_angle_deg = crest->contact.blade_angle_deg;
    stroke.energy_up_mj = crest_energy - way.from().contact.energy_nmm;
    stroke.energy_released_mj = crest_energy - way.to().contact.energy_nmm;
    stroke.snap_energy_mj = way.snap_energy_mj();
    stroke.closing_peak_torque_nmm = -way.closing_peak().closing_nmm();
    stroke.closing_peak_angle_deg = way.closing_peak().contact.blade_angle_deg;
    stroke.closing_start_torque_nmm = -way.to().closing_nmm();
    return stroke;
}

std::optional<Stroke> make_stroke(const Action& action, const Contact& from, const Contact& to) {
    const Turns turns(action, {from.blade_angle_deg, to.blade_angle_deg});
    LazyStroke way(turns, from.blade_angle_deg, to.blade_angle_deg);
    return make_stroke(way);
}

}  // namespace backspring

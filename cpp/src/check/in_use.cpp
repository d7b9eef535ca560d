#include "backspring/check/in_use.hpp"

#include "backspring/action/rest.hpp"
#include "backspring/check/look.hpp"

namespace backspring {
namespace {

/// From the blade at rest closed to open, as a check looks at it.
std::vector<Step> travel(const Action& action, const Design& design) {
    const Rests rests = find_rests(action.joint, design.tang.half_stop_mm.has_value());
    return sweep(action, rests.closed ? rests.closed->blade_angle_deg : 0.0, 180.0, 1.0);
}

}  // namespace

PlasticSet permanent_set(const Design& design, std::optional<double> yield_mpa) {
    const Action action = make_action(design);
    return plastic_set(action, design.spring, travel(action, design),
                       yield_mpa.value_or(design.strength.yield_mpa.value));
}

std::vector<BearingPressure> bearing_pressures(const Design& design) {
    const Action action = make_action(design);
    const Elastic& steel = design.spring.elastic;
    return bearing_pressures(action.joint, travel(action, design), design.spring.width_mm,
                             contact_modulus_mpa(steel, steel));
}

}  // namespace backspring

#include "backspring/strength/pins.hpp"

#include <algorithm>
#include <numbers>

#include "backspring/action/travel_forces.hpp"
#include "backspring/core/require.hpp"

namespace backspring {
namespace {

// Distortion energy: yield in shear over yield in tension.
constexpr double kShearYield = 1.0 / std::numbers::sqrt3;

LimitedStress limited(double stress_mpa, double limit_mpa) {
    LimitedStress found{stress_mpa, limit_mpa, {}};
    if (stress_mpa > 0.0) found.margin = limit_mpa / stress_mpa;
    return found;
}

void require_sound(const PinInput& input) {
    Requirements rules;
    rules.in_range("force_n", input.force_n, 0.0, 1e6, "N");
    rules.positive("pin_mm", input.pin_mm, 100.0, "mm");
    rules.positive("spring_width_mm", input.spring_width_mm, 100.0, "mm");
    if (input.liner_mm) rules.positive("liner_mm", *input.liner_mm, 100.0, "mm");
    rules.positive("pin_yield_mpa", input.pin_yield_mpa, 3000.0, "MPa");
    rules.positive("spring_yield_mpa", input.spring_yield_mpa, 3000.0, "MPa");
    rules.positive("liner_yield_mpa", input.liner_yield_mpa, 3000.0, "MPa");
    rules.throw_if_any();
}

}  // namespace

std::optional<WorstPinForces> worst_pin_forces(const Spring& spring, const Turns& travel) {
    if (spring.support.kind != SupportKind::two_pins) return std::nullopt;
    if (const TravelForces forces(travel); forces.tells()) {
        const double per_nmm = 1.0 / spring.support.rear_pin_mm;
        const Peak middle = forces.largest({1.0, per_nmm}), rear = forces.largest({0.0, per_nmm});
        return WorstPinForces{.forces = {std::max(middle.value, 0.0), std::max(rear.value, 0.0)},
                              .middle_angle_deg = middle.blade_angle_deg,
                              .rear_angle_deg = rear.blade_angle_deg};
    }
    const auto forces = [&](const Turn& turn) { return pin_forces(spring, loads(turn.contact)); };
    const Turn middle = largest(travel, [&](const Turn& t) { return forces(t).middle_n; });
    const Turn rear = largest(travel, [&](const Turn& t) { return forces(t).rear_n; });
    return WorstPinForces{
        .forces = {std::max(forces(middle).middle_n, 0.0), std::max(forces(rear).rear_n, 0.0)},
        .middle_angle_deg = angle_of(&middle),
        .rear_angle_deg = angle_of(&rear)};
}

PinStress pin_stress(const PinInput& input) {
    require_sound(input);
    const double force = input.force_n, pin = input.pin_mm;
    PinStress found;
    found.shear =
        limited(2.0 * force / (std::numbers::pi * pin * pin), kShearYield * input.pin_yield_mpa);
    found.spring_bearing = limited(force / (pin * input.spring_width_mm),
                                   std::min(input.pin_yield_mpa, input.spring_yield_mpa));
    if (input.liner_mm) {
        found.liner_bearing = limited(0.5 * force / (pin * *input.liner_mm),
                                      std::min(input.pin_yield_mpa, input.liner_yield_mpa));
    }
    return found;
}

}  // namespace backspring

#include "backspring/strength/plastic_set.hpp"

#include <algorithm>
#include <optional>

#include "backspring/core/require.hpp"
#include "opening.hpp"
#include "stressed_angles.hpp"

namespace backspring {
namespace {

constexpr int kMostOpenings = 100;

/// A line that no moment of a travel passes, with room for touches that move as the spring sets.
MomentLine greatest_moments(const Joint& joint, const Turns& travel) {
    constexpr double room = 1.05;
    MomentLine most{.ahead_mm = joint.pad.start_mm};
    for (const Turn* turn : travel.all()) {
        double root = 0.0, ahead = 0.0;
        for (const Load& load : loads_ahead(turn->contact)) {
            root += load.force_n * load.x_mm;
            ahead += load.force_n * std::max(load.x_mm - joint.pad.start_mm, 0.0);
        }
        most.root_nmm = std::max(most.root_nmm, room * root);
        most.ahead_nmm = std::max(most.ahead_nmm, room * ahead);
    }
    return most;
}

/// Opens it until an opening changes nothing more.
void open(PlasticSet& set, Opening& opening, std::span<const StressedAngle> angles) {
    const auto yields = [&](const StressedAngle& angle) {
        if (angle.contact && opening.surely_elastic(*angle.contact)) return false;
        return opening.pass(angle.blade_angle_deg);
    };
    for (bool changed = true; changed && set.openings_to_shakedown < kMostOpenings;) {
        changed = false;
        for (const StressedAngle& angle : angles) changed |= yields(angle);
        if (set.openings_to_shakedown == 0) set.shift_opened = opening.shift();
        set.openings_to_shakedown += changed ? 1 : 0;
        set.shakes_down = !changed;
    }
}

PlasticSet unyielded(const Joint& joint) {
    PlasticSet set;
    set.preload_before_mm = joint.open_mm - joint.face_mm - joint.face_slope * joint.pivot_mm;
    set.preload_opened_mm = set.preload_after_shakedown_mm = set.preload_before_mm;
    return set;
}

PlasticSet set_of(const Joint& joint,
                  const PlasticSpring& plastic,
                  std::span<const StressedAngle> angles) {
    PlasticSet set = unyielded(joint);
    if (angles.empty()) return set;
    Opening opening(joint, plastic);
    open(set, opening, angles);
    const auto less = [](const auto& a, const auto& b) { return a.stress_mpa < b.stress_mpa; };
    set.blade_angle_deg = std::max_element(angles.begin(), angles.end(), less)->blade_angle_deg;
    set.yielded = true;
    set.elastic_force_n = contact_at(joint, set.blade_angle_deg).force_n;
    set.shift = opening.shift();
    set.force_n = contact_at(with_shift(joint, set.shift), set.blade_angle_deg).force_n;
    set.drop_pivot_mm = set.shift.at_mm(joint.pivot_mm);
    set.drop_dial_mm = set.shift.at_mm(joint.dial_mm);
    set.drop_pad_start_mm = set.shift.at_mm(joint.pad.start_mm);
    set.drop_pad_end_mm = set.shift.at_mm(joint.pad.end_mm);
    set.preload_opened_mm -= set.shift_opened.at_mm(joint.pivot_mm);
    set.preload_after_shakedown_mm -= set.drop_pivot_mm;
    set.zones = opening.zones();
    set.folded = std::any_of(set.zones.begin(), set.zones.end(),
                             [](const PlasticZone& zone) { return !zone.strain; });
    return set;
}

}  // namespace

std::vector<PlasticSet> plastic_sets(const Spring& spring,
                                     const Turns& travel,
                                     std::span<const double> yields_mpa) {
    Requirements rules;
    for (const double yield : yields_mpa) rules.positive("yield_mpa", yield, 1e9, "MPa");
    rules.throw_if_any();
    if (yields_mpa.empty()) return {};
    const Joint& joint = travel.action().joint;
    std::vector<PlasticSet> sets(yields_mpa.size(), unyielded(joint));
    std::optional<PlasticSpring> any;
    std::optional<MomentLine> most;
    for (std::size_t i = 0; i < sets.size(); ++i) {
        const auto angles = stressed_angles(travel, yields_mpa[i]);
        if (angles.empty()) continue;
        if (!any) any.emplace(spring, joint.pad.end_mm, joint.flexibility, yields_mpa[i]);
        if (!most) most = greatest_moments(joint, travel);
        PlasticSpring plastic = any->with_yield(yields_mpa[i]);
        plastic.leave_aside(*most);
        sets[i] = set_of(joint, plastic, angles);
    }
    return sets;
}

PlasticSet plastic_set(const Spring& spring, const Turns& travel, double yield_mpa) {
    return plastic_sets(spring, travel, {&yield_mpa, 1}).front();
}

Joint with_shift(const Joint& joint, const FaceShift& shift) {
    Joint moved = joint;
    moved.face_mm += shift.height_mm;
    moved.face_slope += shift.slope;
    for (Neighbour& neighbour : moved.beside) {
        neighbour.tang.face_mm += shift.height_mm;
        neighbour.tang.face_slope += shift.slope;
    }
    return moved;
}

}  // namespace backspring

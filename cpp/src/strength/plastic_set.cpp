#include "backspring/strength/plastic_set.hpp"

#include <algorithm>

#include "backspring/core/require.hpp"
#include "opening.hpp"

namespace backspring {
namespace {

constexpr int kMostOpenings = 20;

/// A line that no moment of a travel passes, with room for touches that move as the spring sets.
MomentLine greatest_moments(const Joint& joint, const Turns& travel) {
    constexpr double room = 1.05;
    MomentLine most{.ahead_mm = joint.pad.start_mm};
    for (const Turn* turn : travel.all()) {
        const MomentLine line = line_of(loads_ahead(turn->contact), joint.pad.start_mm);
        most.root_nmm = std::max(most.root_nmm, room * line.root_nmm);
        most.ahead_nmm = std::max(most.ahead_nmm, room * line.ahead_nmm);
    }
    return most;
}

/// Opens it until an opening changes nothing more.
void open(PlasticSet& set, Opening& opening) {
    for (bool further = true; further && set.openings_to_shakedown < kMostOpenings;) {
        further = opening.open();
        if (set.openings_to_shakedown == 0) set.shift_opened = opening.shift();
        set.openings_to_shakedown += further ? 1 : 0;
        set.shakes_down = !further;
    }
}

PlasticSet unyielded(const Joint& joint) {
    PlasticSet set;
    set.preload_before_mm = joint.open_mm - joint.face_mm - joint.face_slope * joint.pivot_mm;
    set.preload_opened_mm = set.preload_after_shakedown_mm = set.preload_before_mm;
    return set;
}

/// @param opening  not yet opened
/// @param worst  contact of the travel at which the elastic spring is stressed most
PlasticSet set_of(Opening opening, const Turns& travel, const Contact& worst) {
    const Joint& joint = travel.action().joint;
    PlasticSet set = unyielded(joint);
    open(set, opening);
    set.contacts = opening.contacts();
    set.blade_angle_deg = worst.blade_angle_deg;
    set.yielded = true;
    set.elastic_force_n = worst.force_n;
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
    if (yields_mpa.empty()) return {};
    const Turn worst = most_stressed(travel.action(), travel.pieces());
    return plastic_sets(spring, travel, worst.contact, yields_mpa);
}

std::vector<PlasticSet> plastic_sets(const Spring& spring,
                                     const Turns& travel,
                                     const Contact& worst,
                                     std::span<const double> yields_mpa) {
    Requirements rules;
    for (const double yield : yields_mpa) rules.positive("yield_mpa", yield, 1e9, "MPa");
    rules.throw_if_any();
    if (yields_mpa.empty()) return {};
    const Joint& joint = travel.action().joint;
    std::vector<PlasticSet> sets(yields_mpa.size(), unyielded(joint));
    const double most_mpa = peak_stress(travel.action(), worst).stress_mpa;
    const double least_mpa = *std::ranges::min_element(yields_mpa);
    if (most_mpa <= least_mpa) return sets;
    const MomentLine most = greatest_moments(joint, travel);
    PlasticSpring softest(spring, joint.pad.end_mm, joint.flexibility, least_mpa, most);
    softest.leave_aside(most);
    const std::vector<StressedWay> ways = stressed_ways(travel, softest);
    for (std::size_t i = 0; i < sets.size(); ++i) {
        if (most_mpa <= yields_mpa[i]) continue;
        PlasticSpring plastic = softest.with_yield(yields_mpa[i]);
        plastic.leave_aside(most);
        sets[i] = set_of(Opening(travel, plastic, ways, least_mpa / yields_mpa[i]), travel, worst);
    }
    return sets;
}

PlasticSet plastic_set(const Spring& spring, const Turns& travel, double yield_mpa) {
    return plastic_sets(spring, travel, {&yield_mpa, 1}).front();
}

Joint with_shift(const Joint& joint, const FaceShift& shift) {
    Joint moved = joint;
    set_shift(moved, joint, shift);
    return moved;
}

void set_shift(Joint& joint, const Joint& fitted, const FaceShift& shift) {
    const auto set = [&](Mounted& tang, const Mounted& before) {
        tang.face_mm = before.face_mm + shift.height_mm;
        tang.face_slope = before.face_slope + shift.slope;
    };
    set(joint, fitted);
    for (std::size_t i = 0; i < joint.beside.size(); ++i) {
        set(joint.beside[i].tang, fitted.beside[i].tang);
    }
}

}  // namespace backspring

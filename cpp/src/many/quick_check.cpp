#include "quick_check.hpp"

#include <array>

#include "backspring/action/reading.hpp"
#include "backspring/check/look.hpp"
#include "backspring/strength/yielding.hpp"
#include "flat_reading.hpp"
#include "quick_strokes.hpp"

namespace backspring {
namespace {

using Rest = std::optional<Contact>;

#define BACKSPRING_QUICK(name, need) \
    QuickColumn { #name, &QuickCheck::name, need }
constexpr std::array kColumns{
    BACKSPRING_QUICK(peak_pull_n, nullptr),
    BACKSPRING_QUICK(peak_torque_nmm, nullptr),
    BACKSPRING_QUICK(travel_peak_stress_mpa, &Wanted::stress),
    BACKSPRING_QUICK(travel_peak_stress_angle_deg, &Wanted::stress),
    BACKSPRING_QUICK(travel_peak_stress_station_mm, &Wanted::stress),
    BACKSPRING_QUICK(yield_margin, &Wanted::stress),
    BACKSPRING_QUICK(yield_margin_low, &Wanted::stress),
    BACKSPRING_QUICK(reading_loaded_half_stop_mm, nullptr),
    BACKSPRING_QUICK(reading_loaded_closed_mm, nullptr),
    BACKSPRING_QUICK(reading_unloaded_half_stop_mm, &Wanted::unloaded),
    BACKSPRING_QUICK(reading_unloaded_closed_mm, &Wanted::unloaded),
    BACKSPRING_QUICK(force_open_n, nullptr),
    BACKSPRING_QUICK(force_half_stop_n, nullptr),
    BACKSPRING_QUICK(force_closed_n, nullptr),
    BACKSPRING_QUICK(blade_angle_half_stop_deg, nullptr),
    BACKSPRING_QUICK(blade_angle_closed_deg, nullptr),
    BACKSPRING_QUICK(crest_from_closed_deg, nullptr),
    BACKSPRING_QUICK(crest_from_half_stop_deg, nullptr),
    BACKSPRING_QUICK(snap_energy_mj, &Wanted::snap),
    BACKSPRING_QUICK(stiffness_n_per_mm, nullptr),
};
#undef BACKSPRING_QUICK

void put(double& place, const std::optional<double>& value) { place = value.value_or(kNone); }

void look_at_rests(QuickCheck& row, const Action& action, const Rests& rests) {
    row.force_open_n = rests.open.force_n;
    if (rests.half_stop) {
        row.force_half_stop_n = rests.half_stop->force_n;
        row.blade_angle_half_stop_deg = rests.half_stop->blade_angle_deg;
    }
    if (rests.closed) {
        row.force_closed_n = rests.closed->force_n;
        row.blade_angle_closed_deg = rests.closed->blade_angle_deg;
    }
    const Readings loaded = readings(action.joint, rests);
    put(row.reading_loaded_half_stop_mm, loaded.half_stop_mm);
    put(row.reading_loaded_closed_mm, loaded.closed_mm);
    const double pivot = action.joint.pivot_mm;
    row.stiffness_n_per_mm = 1.0 / deflection_per_force(action.joint.flexibility, pivot, pivot);
}

void look_unloaded(QuickCheck& row, const Design& design, const Rests& loaded) {
    const Joint joint = make_unloaded_joint(design.spring, design.tang, design.fit);
    const auto& half_stop = design.tang.half_stop_mm;
    Readings unloaded;
    unloaded.closed_mm = flat_reading_mm(joint, 0.0, design.tang.closed_mm);
    if (half_stop) unloaded.half_stop_mm = flat_reading_mm(joint, 90.0, *half_stop);
    if (!unloaded.closed_mm || (half_stop && !unloaded.half_stop_mm)) {
        unloaded = readings(joint, find_rests(joint, half_stop.has_value()));
    }
    // As in a check: a position the loaded blade does not have has no reading at all.
    if (loaded.half_stop) put(row.reading_unloaded_half_stop_mm, unloaded.half_stop_mm);
    if (loaded.closed) put(row.reading_unloaded_closed_mm, unloaded.closed_mm);
}

/// Adds a stroke; whether it has a crest.
bool add_stroke(QuickCheck& row,
                LazyTravel& travel,
                const Contact& from,
                const Contact& to,
                bool with_snap,
                double QuickCheck::*crest) {
    LazyStroke way(travel, from, to);
    const QuickStroke stroke = quick_stroke(way, with_snap);
    if (!stroke.crest_deg) return false;
    row.*crest = *stroke.crest_deg;
    row.peak_torque_nmm = std::fmax(row.peak_torque_nmm, stroke.peak_torque_nmm);
    if (with_snap) row.snap_energy_mj = std::fmax(row.snap_energy_mj, stroke.snap_energy_mj);
    return true;
}

/// Adds all strokes; whether each has a crest.
bool add_strokes(QuickCheck& row, LazyTravel& travel, const Rests& rests, bool with_snap) {
    const auto add = [&](const Contact& from, const Contact& to, double QuickCheck::*crest) {
        return add_stroke(row, travel, from, to, with_snap, crest);
    };
    if (!rests.half_stop) return add(*rests.closed, rests.open, &QuickCheck::crest_from_closed_deg);
    const bool first = add(*rests.closed, *rests.half_stop, &QuickCheck::crest_from_closed_deg);
    const bool second = add(*rests.half_stop, rests.open, &QuickCheck::crest_from_half_stop_deg);
    return first && second;
}

bool let_go(const Rest& rest) { return rest && rest->count == 0; }

RowStatus status_of(const Rests& rests, bool with_half_stop, bool all_crests) {
    if (let_go(rests.closed) || let_go(rests.half_stop) || let_go(rests.open)) {
        return RowStatus::lifted_off;
    }
    if (!rests.closed) return RowStatus::no_closed_rest;
    if (rests.open.torque_nmm >= 0.0) return RowStatus::not_held_open;
    if (with_half_stop && !rests.half_stop) return RowStatus::no_half_stop_rest;
    return all_crests ? RowStatus::ok : RowStatus::lifted_off;
}

void look_at_stress(QuickCheck& row, LazyTravel& travel, const Band& yield_mpa) {
    const QuickStress stress = quick_stress(travel);
    row.travel_peak_stress_mpa = stress.peak.stress_mpa;
    row.travel_peak_stress_angle_deg = stress.angle_deg;
    row.travel_peak_stress_station_mm = stress.peak.station_mm;
    if (const auto margin = yield_margin(yield_mpa, stress.peak.stress_mpa)) {
        row.yield_margin = margin->value;
        row.yield_margin_low = margin->low;
    }
}

}  // namespace

std::span<const QuickColumn> quick_columns() { return kColumns; }

QuickCheck quick_check(const Design& design, const Wanted& wanted) {
    QuickCheck row;
    if (!faults(design).empty()) {
        row.status = RowStatus::invalid;
        return row;
    }
    const Action action{.joint = make_joint(design.spring, design.tang, design.fit),
                        .probe = make_stress_probe(design.spring),
                        .friction = design.friction};
    const bool with_half_stop = design.tang.half_stop_mm.has_value();
    const Rests rests = find_rests(action.joint, with_half_stop);
    look_at_rests(row, action, rests);
    if (wanted.unloaded) look_unloaded(row, design, rests);
    LazyTravel travel(action, rests.closed ? rests.closed->blade_angle_deg : 0.0);
    bool all_crests = true;
    if (rests.closed && rests.open.torque_nmm < 0.0) {
        all_crests = add_strokes(row, travel, rests, wanted.snap);
        if (design.blade.nail_nick_mm) {
            row.peak_pull_n = row.peak_torque_nmm / *design.blade.nail_nick_mm;
        }
    }
    if (wanted.stress) look_at_stress(row, travel, design.strength.yield_mpa);
    row.status = status_of(rests, with_half_stop, all_crests);
    return row;
}

}  // namespace backspring

#include "row.hpp"

#include <algorithm>
#include <array>
#include <limits>

namespace backspring {
namespace {

using Value = std::optional<double>;
using Rest = std::optional<Contact>;

Value force_of(const Rest& rest) { return rest ? Value(rest->force_n) : std::nullopt; }
Value angle_of(const Rest& rest) { return rest ? Value(rest->blade_angle_deg) : std::nullopt; }

/// With all other blades closed.
Value crest_of(CaseSolutions& cases, std::size_t way) {
    auto& ways = cases.front().ways();
    return way < ways.size() ? ways[way].crest_angle_deg() : std::nullopt;
}

Value snap_energy_mj(Solution& solution) {
    Value largest;
    for (LazyStroke& way : solution.ways()) {
        if (way.has_crest()) largest = std::max(largest.value_or(0.0), way.snap_energy_mj());
    }
    return largest;
}

/// The largest force on the spring at a rest.
Value force_of(CaseSolutions& cases, Rest Rests::*rest) {
    return largest(cases, [&](Solution& s) { return force_of(s.rests().*rest); });
}

/// Of one way, in the case of the others in which it is largest.
Value torque_of_way(CaseSolutions& cases, std::size_t way) {
    return largest(cases, [=](Solution& s) { return way_peak_torque_nmm(s, way); });
}

Value pull_of_way(CaseSolutions& cases, std::size_t way) {
    const auto& nick = cases.front().design().own().blade.nail_nick_mm;
    const Value torque = nick ? torque_of_way(cases, way) : std::nullopt;
    return torque ? Value(*torque / *nick) : std::nullopt;
}

Value stress_of_way(CaseSolutions& cases, std::size_t way) {
    return largest(cases, [=](Solution& s) { return way_peak_stress_mpa(s, way); });
}

Value margin_of_way(CaseSolutions& cases, std::size_t way) {
    const Value stress = stress_of_way(cases, way);
    const double yield = cases.front().design().strength.yield_mpa.value;
    return stress && *stress > 0.0 ? Value(yield / *stress) : std::nullopt;
}

constexpr std::array kColumns{
    RowColumn{"peak_pull_n", ResultKind::force, &peak_pull_n},
    RowColumn{"peak_torque_nmm", ResultKind::effort, &peak_torque_nmm},
    RowColumn{"travel_peak_stress_mpa", ResultKind::stress,
              [](CaseSolutions& s) -> Value { return most_stressed(s).peak.stress_mpa; }},
    RowColumn{"travel_peak_stress_angle_deg", ResultKind::angle,
              [](CaseSolutions& s) -> Value { return most_stressed(s).contact.blade_angle_deg; }},
    RowColumn{"travel_peak_stress_station_mm", ResultKind::station,
              [](CaseSolutions& s) -> Value { return most_stressed(s).peak.station_mm; }},
    RowColumn{"yield_margin", ResultKind::margin,
              [](CaseSolutions& s) {
                  const auto margin = yield_margin(s);
                  return margin ? Value(margin->value) : std::nullopt;
              }},
    RowColumn{"yield_margin_low", ResultKind::margin,
              [](CaseSolutions& s) {
                  const auto margin = yield_margin(s);
                  return margin ? Value(margin->low) : std::nullopt;
              }},
    RowColumn{"reading_loaded_half_stop_mm", ResultKind::reading,
              [](CaseSolutions& s) { return readings(s).half_stop_mm; }},
    RowColumn{"reading_loaded_closed_mm", ResultKind::reading,
              [](CaseSolutions& s) { return readings(s).closed_mm; }},
    // As in a check: a position the loaded blade does not have has no reading at all.
    RowColumn{"reading_unloaded_half_stop_mm", ResultKind::reading,
              [](CaseSolutions& cases) {
                  Solution& s = cases.front();
                  return s.rests().half_stop ? s.unloaded_readings().half_stop_mm : std::nullopt;
              }},
    RowColumn{"reading_unloaded_closed_mm", ResultKind::reading,
              [](CaseSolutions& cases) {
                  Solution& s = cases.front();
                  return s.rests().closed ? s.unloaded_readings().closed_mm : std::nullopt;
              }},
    RowColumn{"force_open_n", ResultKind::force,
              [](CaseSolutions& cases) {
                  return largest(cases,
                                 [](Solution& s) -> Value { return s.rests().open.force_n; });
              }},
    RowColumn{"force_half_stop_n", ResultKind::force,
              [](CaseSolutions& s) { return force_of(s, &Rests::half_stop); }},
    RowColumn{"force_closed_n", ResultKind::force,
              [](CaseSolutions& s) { return force_of(s, &Rests::closed); }},
    RowColumn{"blade_angle_half_stop_deg", ResultKind::angle,
              [](CaseSolutions& s) { return angle_of(s.front().rests().half_stop); }},
    RowColumn{"blade_angle_closed_deg", ResultKind::angle,
              [](CaseSolutions& s) { return angle_of(s.front().rests().closed); }},
    RowColumn{"crest_from_closed_deg", ResultKind::angle,
              [](CaseSolutions& s) { return crest_of(s, 0); }},
    RowColumn{"crest_from_half_stop_deg", ResultKind::angle,
              [](CaseSolutions& s) { return crest_of(s, 1); }},
    RowColumn{"peak_pull_from_closed_n", ResultKind::force,
              [](CaseSolutions& s) { return pull_of_way(s, 0); }},
    RowColumn{"peak_pull_from_half_stop_n", ResultKind::force,
              [](CaseSolutions& s) { return pull_of_way(s, 1); }},
    RowColumn{"peak_torque_from_closed_nmm", ResultKind::effort,
              [](CaseSolutions& s) { return torque_of_way(s, 0); }},
    RowColumn{"peak_torque_from_half_stop_nmm", ResultKind::effort,
              [](CaseSolutions& s) { return torque_of_way(s, 1); }},
    RowColumn{"travel_peak_stress_from_closed_mpa", ResultKind::stress,
              [](CaseSolutions& s) { return stress_of_way(s, 0); }},
    RowColumn{"travel_peak_stress_from_half_stop_mpa", ResultKind::stress,
              [](CaseSolutions& s) { return stress_of_way(s, 1); }},
    RowColumn{"yield_margin_from_closed", ResultKind::margin,
              [](CaseSolutions& s) { return margin_of_way(s, 0); }},
    RowColumn{"yield_margin_from_half_stop", ResultKind::margin,
              [](CaseSolutions& s) { return margin_of_way(s, 1); }},
    RowColumn{"snap_energy_mj", ResultKind::energy,
              [](CaseSolutions& s) { return largest(s, &snap_energy_mj); }},
    RowColumn{"stiffness_n_per_mm", ResultKind::stiffness,
              [](CaseSolutions& s) -> Value { return s.front().stiffness_n_per_mm(); }},
    RowColumn{"openings_margin", ResultKind::margin,
              [](CaseSolutions& s) { return least(s, &openings_margin); }},
    RowColumn{kEdgeGap, ResultKind::reading,
              [](CaseSolutions& s) { return least(s, &edge_gap_left_mm); }},
    RowColumn{kLeastPull, ResultKind::force, &least_peak_pull_n},
    RowColumn{kOpenReading, ResultKind::reading,
              [](CaseSolutions& s) -> Value { return readings(s).open_mm; }},
};

bool let_go(const Rest& rest) { return rest && rest->count == 0; }

RowStatus status_of(Solution& solution) {
    const Rests& rests = solution.rests();
    if (let_go(rests.closed) || let_go(rests.half_stop) || let_go(rests.open)) {
        return RowStatus::lifted_off;
    }
    if (!rests.closed) return RowStatus::no_closed_rest;
    if (rests.open.torque_nmm >= 0.0) return RowStatus::not_held_open;
    if (solution.has_half_stop() && !rests.half_stop) return RowStatus::no_half_stop_rest;
    return snaps_everywhere(solution) ? RowStatus::ok : RowStatus::lifted_off;
}

/// Of the first case that does not work, if any.
RowStatus status_of(CaseSolutions& cases) {
    for (Solution& solution : cases) {
        const RowStatus status = status_of(solution);
        if (status != RowStatus::ok) return status;
    }
    return RowStatus::ok;
}

}  // namespace

std::span<const RowColumn> detail::row_columns() { return kColumns; }

RowStatus detail::work_row(const Design& design,
                           std::span<const RowColumn> columns,
                           std::span<double> values) {
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    std::fill(values.begin(), values.end(), none);
    std::optional<CaseSolutions> lazy;
    try {
        lazy.emplace(design);
    } catch (const InvalidInput&) {
        return RowStatus::invalid;
    }
    CaseSolutions& solved = *lazy;
    for (std::size_t k = 0; k < columns.size(); ++k) {
        const Value value = columns[k].of(solved);
        if (value && !is_possible(design, columns[k].kind, *value)) {
            std::fill(values.begin(), values.end(), none);
            return RowStatus::out_of_bounds;
        }
        values[k] = value.value_or(none);
    }
    return status_of(solved);
}

}  // namespace backspring

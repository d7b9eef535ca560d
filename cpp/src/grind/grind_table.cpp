#include "backspring/grind/grind_table.hpp"

#include <algorithm>
#include <cmath>

#include "../check/check_parts.hpp"
#include "../design/rules.hpp"
#include "backspring/action/reading.hpp"
#include "backspring/check/look.hpp"
#include "backspring/strength/yielding.hpp"

namespace backspring {
namespace {

constexpr double kMostSteps = 1e4;
constexpr double kStepDeg = 1.0;  // as a check takes it, so that both have the same numbers
// A depth that a whole number of steps reaches but for rounding takes no further step.
constexpr double kRounding = 1e-9;

int steps(const char* key, double depth_mm, double step_mm) {
    Requirements rules;
    rules.in_range("depth", depth_mm, 0.0, kThickestMm, "mm");
    if (rules.positive(key, step_mm, kThickestMm, "mm")) {
        rules.require(!(depth_mm / step_mm > kMostSteps), key, [&] {
            return "must not ask for more than 10000 steps, got " + with_unit(step_mm, "mm") +
                   " for " + with_unit(depth_mm, "mm");
        });
    }
    rules.throw_if_any();
    return static_cast<int>(std::ceil(depth_mm / step_mm - kRounding));
}

void add_efforts(GrindRow& row, const std::vector<StrokeReport>& strokes) {
    for (const StrokeReport& report : strokes) {
        row.peak_torque_nmm =
            std::max(row.peak_torque_nmm.value_or(0.0), report.stroke.peak_torque_nmm);
        if (report.peak_pull_n) {
            row.peak_pull_n = std::max(row.peak_pull_n.value_or(0.0), *report.peak_pull_n);
        }
    }
}

}  // namespace

GrindRow grind_row(const Design& design, double removed_mm) {
    const Action action = make_action(design);
    const Rests rests = find_rests(action.joint, design.tang.half_stop_mm.has_value());
    const double start = rests.closed ? rests.closed->blade_angle_deg : 0.0;
    const std::vector<Step> steps = sweep(action, start, 180.0, kStepDeg);
    const PeakStress peak = peak_stress(action, most_stressed(action, steps));
    const Readings loaded = readings(action.joint, rests);
    const double pivot = design.tang.pivot_mm;

    GrindRow row;
    row.removed_mm = removed_mm;
    row.preload_mm = design.fit.preload_mm;
    row.stiffness_n_per_mm = 1.0 / deflection_per_force(action.joint.flexibility, pivot, pivot);
    add_efforts(row, make_reports(design, rests, make_strokes(action, steps, rests)));
    row.travel_peak_stress_mpa = peak.stress_mpa;
    row.travel_peak_stress_station_mm = peak.station_mm;
    if (const auto margin = yield_margin(design.strength.yield_mpa, peak.stress_mpa)) {
        row.yield_margin = margin->value;
        row.yield_margin_low = margin->low;
    }
    row.reading_loaded_half_stop_mm = loaded.half_stop_mm;
    row.reading_loaded_closed_mm = loaded.closed_mm;
    return row;
}

std::vector<GrindRow> grind_table(const Design& design, const Cut& cut, double step_mm) {
    const Design whole = grind(design, cut);
    const int last = steps("step", cut.depth_mm, step_mm);
    std::vector<GrindRow> rows;
    rows.reserve(static_cast<std::size_t>(last) + 1);
    for (int i = 0; i < last; ++i) {
        const double depth = i * step_mm;
        rows.push_back(grind_row(grind(design, {cut.face, depth, cut.region}), depth));
    }
    rows.push_back(grind_row(whole, cut.depth_mm));
    return rows;
}

int grind_passes(double depth_mm, double pass_mm) { return steps("pass", depth_mm, pass_mm); }

}  // namespace backspring

#include "backspring/grind/grind_table.hpp"

#include <cmath>

#include "../design/rules.hpp"
#include "backspring/check/case_solutions.hpp"

namespace backspring {
namespace {

constexpr double kMostSteps = 1e4;
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

}  // namespace

GrindRow grind_row(const Design& design, double removed_mm) {
    CaseSolutions solved(design);
    const PeakStress& peak = most_stressed(solved).peak;
    const Readings loaded = readings(solved);
    GrindRow row;
    row.removed_mm = removed_mm;
    row.preload_mm = design.own().fit.preload_mm;
    row.stiffness_n_per_mm = solved.front().stiffness_n_per_mm();
    row.peak_torque_nmm = peak_torque_nmm(solved);
    row.peak_pull_n = peak_pull_n(solved);
    row.travel_peak_stress_mpa = peak.stress_mpa;
    row.travel_peak_stress_station_mm = peak.station_mm;
    if (const auto margin = yield_margin(solved)) {
        row.yield_margin = margin->value;
        row.yield_margin_low = margin->low;
    }
    row.reading_loaded_half_stop_mm = loaded.half_stop_mm;
    row.reading_loaded_closed_mm = loaded.closed_mm;
    if (design.blades.size() > 1) row.reading_loaded_open_mm = loaded.open_mm;
    row.targets = judge_targets(solved);
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

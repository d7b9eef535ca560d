#include "backspring/fit/bench_figures.hpp"

#include <cmath>

#include "backspring/check/closed_blade.hpp"
#include "backspring/check/solution.hpp"
#include "loaded_joint.hpp"

namespace backspring {
namespace {

/// Share of a pull within which two strokes count as equally hard.
constexpr double kAlike = 0.002;

/// The larger of two, without a kink where they are alike: there 0.1 % more than either.
double larger(double a, double b) {
    return 0.5 * (a + b + std::hypot(a - b, kAlike * (a + b) / 2));
}

void raise_to(std::optional<double>& pull_n, double torque_nmm, double nick_mm) {
    const double this_n = torque_nmm / nick_mm;
    pull_n = pull_n ? larger(*pull_n, this_n) : this_n;
}

void add_pulls(BenchFigures& figures, Solution& solution, double nick_mm) {
    if (!snaps_everywhere(solution)) return;
    for (LazyStroke& way : solution.ways()) {
        raise_to(figures.peak_pull_n, way.opening_peak().opening_nmm(), nick_mm);
        raise_to(figures.closing_peak_pull_n, -way.closing_peak().closing_nmm(), nick_mm);
    }
    const double start_nmm = solution.strokes().front().start_torque_nmm;
    figures.start_pull_n = start_nmm / nick_mm;
}

}  // namespace

BenchFigures bench_figures(const Design& design, const FitUnknowns& unknowns) {
    Solution solution(design, detail::loaded_joint(design, unknowns));
    BenchFigures figures;
    if (design.own().blade.nail_nick_mm)
        add_pulls(figures, solution, *design.own().blade.nail_nick_mm);
    figures.travel_peak_stress_mpa = solution.most_stressed().peak.stress_mpa;
    return figures;
}

double hung_movement_mm(const Design& design,
                        double weight_n,
                        double station_mm,
                        const FitUnknowns& unknowns) {
    const Solution solution(design, detail::loaded_joint(design, unknowns));
    const Flexibility& flexibility = solution.joint().flexibility;
    return weight_n * deflection_per_force(flexibility, design.own().fit.dial_mm, station_mm);
}

ClosedFigures closed_figures(const Design& design, double station_mm, const FitUnknowns& unknowns) {
    Solution solution(design, detail::loaded_joint(design, unknowns));
    const auto& closed = solution.rests().closed;
    if (!closed) throw NoConvergence({.code = NoticeCode::not_held_closed});
    const Joint& joint = solution.joint();
    return {.tip_mm = closed_blade(design, joint, *closed).tip_mm,
            .gap_mm = edge_gap_mm(design, joint, *closed, station_mm)};
}

}  // namespace backspring

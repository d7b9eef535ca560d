#include <algorithm>
#include <cmath>

#include "backspring/core/require.hpp"
#include "backspring/fit/blades_plan.hpp"
#include "face_solver.hpp"

namespace backspring {
namespace {

constexpr double kLargestReadingMm = 3.0;
constexpr double kStandsMm = 1e-9;
constexpr int kRoundsOfBlades = 30;

void measured_rules(Requirements& rules, const Design& design, const Measured& measured) {
    const bool square = design.own().tang.half_stop_mm.has_value();
    rules.require(square || !measured.half_stop_mm, "half_stop",
                  [] { return std::string("this tang has no half-stop: give closed alone"); });
    rules.require(!square || measured.half_stop_mm, "half_stop",
                  [] { return std::string("missing: this tang has a half-stop"); });
    if (measured.half_stop_mm) {
        rules.in_range("half_stop", *measured.half_stop_mm, -kLargestReadingMm, kLargestReadingMm,
                       "mm");
    }
    rules.in_range("closed", measured.closed_mm, -kLargestReadingMm, kLargestReadingMm, "mm");
}

Blade blade_as_measured(const Design& design,
                        const Measured& measured,
                        const FitUnknowns& unknowns) {
    const Wanted which = measured.state == FitState::loaded ? Wanted::loaded : Wanted::unloaded;
    const auto [half, closed] = solve_faces(
        {.design = design,
         .unknowns = unknowns,
         .which = which,
         .wanted = {.half_stop_mm = measured.half_stop_mm, .closed_mm = measured.closed_mm},
         .closed = kClosedSide,
         .already = {}});
    return take_off(design.own(), sum(along(kHalfStop, half), along(kClosedSide, closed)));
}

double moved_mm(const Blade& from, const Blade& to) {
    const double half = from.tang.half_stop_mm.value_or(0.0) - to.tang.half_stop_mm.value_or(0.0);
    return std::max(std::abs(half), std::abs(from.tang.closed_mm - to.tang.closed_mm));
}

void require_measured(const Design& design, const Measured& measured) {
    std::vector<Fault> broken = faults(design);
    if (!broken.empty()) throw InvalidInput(std::move(broken));
    Requirements rules;
    measured_rules(rules, design, measured);
    rules.throw_if_any();
}

}  // namespace

Design as_measured(const Design& design, const Measured& measured, const FitUnknowns& unknowns) {
    require_measured(design, measured);
    Design now = design;
    now.own() = blade_as_measured(design, measured, unknowns);
    return now;
}

Design as_measured(const Design& design, const std::vector<BladeMeasured>& measured) {
    Design now = design;
    for (const BladeMeasured& one : measured) {
        require_measured(seen_from(design, one.blade), one.measured);
    }
    double moved = 1.0;
    for (int round = 0; moved > kStandsMm && round < kRoundsOfBlades; ++round) {
        moved = 0.0;
        for (const BladeMeasured& one : measured) {
            const Blade found =
                blade_as_measured(seen_from(now, one.blade), one.measured, one.unknowns);
            moved = std::max(moved, moved_mm(now.blades[one.blade], found));
            Blade& blade = now.blades[one.blade];
            blade.tang = found.tang;
            blade.fit = found.fit;
        }
    }
    return now;
}

}  // namespace backspring

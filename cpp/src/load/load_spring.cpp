#include "backspring/load/load_spring.hpp"

#include <algorithm>

#include "backspring/action/end_stop.hpp"
#include "backspring/check/targets.hpp"
#include "backspring/core/require.hpp"
#include "backspring/core/root.hpp"
#include "backspring/strength/yielding.hpp"
#include "backspring/tang/envelope.hpp"

namespace backspring {
namespace {

constexpr double kShortestLeverMm = 1.0;
constexpr double kMostClearanceMm = 5.0;
constexpr double kLongestLeverMm = 1000.0;
// The force has one summit on the way along the pad; these find the part it is in.
constexpr int kParts = 40;
// An outline is looked at this share of its reach inside its ends, where it surely has a top.
constexpr double kInside = 1e-9;

bool on_two_pins(const Design& design) {
    return design.spring.support.kind == SupportKind::two_pins;
}

void require_good(const Design& design, const PullOut& pull) {
    Requirements rules;
    if (pull.at_mm) {
        rules.in_range("at", *pull.at_mm, kLeastPullStationMm, design.own().pad.end_mm, "mm");
    }
    rules.in_range("clearance", pull.clearance_mm, 0.0, kMostClearanceMm, "mm");
    if (pull.lever_mm) {
        rules.in_range("lever", *pull.lever_mm, kShortestLeverMm, kLongestLeverMm, "mm");
        rules.require(on_two_pins(design), "lever", [] {
            return "goes with a spring on two pins: it brings the rear hole home";
        });
    }
    rules.throw_if_any();
}

/// Force at a station that lifts each place of the pad by what it needs.
class LiftingForce {
  public:
    LiftingForce(const Joint& joint, double at_mm, double clearance_mm)
        : joint_(joint), tang_(joint.outline.body, 0.0), at_mm_(at_mm), clearance_(clearance_mm) {}

    /// @returns  nothing to lift where the tang has no top
    [[nodiscard]] double operator()(double x_mm) const {
        const auto top = tang_.top_at(x_mm - joint_.pivot_mm);
        if (!top) return 0.0;
        const double face = joint_.face_mm + joint_.face_slope * x_mm;
        return (top->y_mm + clearance_ - face) /
               deflection_per_force(joint_.flexibility, x_mm, at_mm_);
    }

  private:
    const Joint& joint_;
    TurnedOutline tang_;
    double at_mm_;
    double clearance_;
};

/// Where a value is greatest of the stations from `from` to `to`.
double greatest_place(const LiftingForce& force, double from, double to) {
    const double part = (to - from) / kParts;
    double best = from;
    for (int i = 1; i <= kParts; ++i) {
        if (force(from + i * part) > force(best)) best = from + i * part;
    }
    const double between =
        find_maximum(force, std::max(from, best - part), std::min(to, best + part));
    return force(between) > force(best) ? between : best;
}

/// The place of the pad, of those above the tang, that asks for the largest force.
double clears_last_mm(const Design& design, const LiftingForce& force) {
    const Pad& pad = design.own().pad;
    const double pivot = design.own().tang.pivot_mm;
    const double rear = pivot - rear_reach_mm(design.own().tang) * (1.0 - kInside);
    const double front = pivot + front_reach_mm(design.own().tang) * (1.0 - kInside);
    return greatest_place(force, std::max(pad.start_mm, rear), std::min(pad.end_mm, front));
}

RearPinLast make_rear_pin_last(Solution& solution, const std::optional<double>& lever_mm) {
    const Design& design = solution.design();
    const double rear = design.spring.support.rear_pin_mm;
    RearPinLast last;
    last.hole_to_go_mm = design.own().fit.preload_mm * rear / design.own().tang.pivot_mm;
    last.force_n =
        open_pin_forces(design.spring, solution.joint(), solution.rests().open).across.rear_n;
    if (lever_mm) last.lever_force_n = last.force_n * rear / *lever_mm;
    return last;
}

void add_stress(SpringLoading& loading, Solution& solution, const Load& force) {
    const PeakStress peak = peak_stress(solution.action().probe, {&force, 1});
    loading.peak_stress_mpa = peak.stress_mpa;
    loading.peak_stress_station_mm = peak.station_mm;
    const Design& design = solution.design();
    loading.wanted_margin = design.targets.yield_margin.value_or(1.0);
    const auto margin = yield_margin(design.strength.yield_mpa, peak.stress_mpa);
    loading.met = !margin || is_within(margin->value, loading.wanted_margin, std::nullopt);
    if (!margin) return;
    loading.yield_margin = margin->value;
    loading.yield_margin_low = margin->low;
    loading.stop_before_mm = margin->value * loading.movement_mm;
    loading.stop_before_low_mm = margin->low * loading.movement_mm;
}

void add_pins(SpringLoading& loading, Solution& solution, const Load& force) {
    if (!on_two_pins(solution.design())) return;
    const PinForces pins = pin_forces(solution.design().spring, {&force, 1});
    loading.rear_pin_force_n = pins.rear_n;
    loading.middle_pin_force_n = pins.middle_n;
    loading.rear_pin_last = make_rear_pin_last(solution, loading.pull.lever_mm);
}

}  // namespace

double nearest_pull_mm(const Design& design) {
    const double behind_tang = design.own().tang.pivot_mm - rear_reach_mm(design.own().tang);
    return std::max(kLeastPullStationMm, std::min(design.own().pad.start_mm, behind_tang));
}

SpringLoading load_spring(Solution& solution, const PullOut& pull) {
    const Design& design = solution.design();
    if (design.blades.size() > 1) return load_spring(design, pull);
    const Joint& joint = solution.joint();
    require_good(design, pull);
    SpringLoading loading;
    loading.pull = pull;
    const double at = loading.at_mm = pull.at_mm.value_or(nearest_pull_mm(design));
    const LiftingForce lifting(joint, at, pull.clearance_mm);
    loading.clears_last_mm = clears_last_mm(design, lifting);
    const Load force{at, std::max(0.0, lifting(loading.clears_last_mm))};
    loading.force_n = force.force_n;
    loading.movement_mm = force.force_n * deflection_per_force(joint.flexibility, at, at);
    add_stress(loading, solution, force);
    add_pins(loading, solution, force);
    return loading;
}

SpringLoading load_spring(const Design& design, const PullOut& pull) {
    Design alone = design;
    alone.blades.resize(1);
    Solution solution(alone);
    return load_spring(solution, pull);
}

}  // namespace backspring

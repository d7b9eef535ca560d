#include "backspring/check/error_budget.hpp"
#include "figures.hpp"

using namespace backspring;

namespace fuzz {
namespace {

void hold_back(const std::optional<BackAlong>& back) {
    if (!back) return;
    const Figures figures("whole back");
    for (const double value : {back->least_mm, back->least_at_mm, back->greatest_mm,
                               back->greatest_at_mm, back->per_dial_mm}) {
        figures.hold(value);
    }
}

/// A result that the design, or one at an end of its tolerances, does not have is no number.
void hold_local(const LocalSpread& local) {
    for (const double value :
         {local.nominal, local.root_sum_square_sd, local.worst_low, local.worst_high}) {
        require(!std::isinf(value), "tolerance " + local.name + ": an endless number");
    }
}

}  // namespace

void hold(const GrindRow& row) {
    const Figures figures("grind row");
    for (const double value : {row.removed_mm, row.preload_mm, row.stiffness_n_per_mm,
                               row.travel_peak_stress_mpa, row.travel_peak_stress_station_mm}) {
        figures.hold(value);
    }
    for (const auto& value : {row.peak_torque_nmm, row.peak_pull_n, row.yield_margin,
                              row.yield_margin_low, row.reading_loaded_half_stop_mm,
                              row.reading_loaded_closed_mm, row.reading_loaded_open_mm}) {
        figures.hold(value);
    }
    for (const TargetResult& target : row.targets) figures.hold(target.value);
}

void hold(const ErrorBudget& budget) {
    for (const BudgetRow& row : budget.rows) {
        const Figures figures("budget " + row.effect);
        for (const auto& value :
             {row.reading_low_mm, row.reading_high_mm, row.pull_low_share, row.pull_high_share}) {
            figures.hold(value);
        }
    }
    const Figures figures("budget's sum");
    const BudgetSum& sum = budget.sum;
    for (const Ends& ends :
         {sum.reading_mm, sum.reading_worst_mm, sum.pull_share, sum.pull_worst_share}) {
        figures.hold(ends.low);
        figures.hold(ends.high);
    }
}

void hold(const Feel& feel) {
    const Figures figures("feel");
    figures.hold(feel.rise_mm);
    figures.hold(feel.evenness);
    figures.hold(feel.seat.open_nmm_per_deg);
    figures.hold(feel.seat.half_stop_nmm_per_deg);
    figures.hold(feel.seat.closed_nmm_per_deg);
    figures.hold(feel.dial_lift_mm);
    figures.hold(feel.pull_oiled_n);
    figures.hold(feel.pull_dry_n);
}

void hold(const FitPlan& plan) {
    const Figures figures("fit plan");
    for (const FitStep& step : plan.steps) {
        figures.hold(step.remove_mm);
        figures.hold(step.closed_mm);
        figures.hold(step.closed_loaded_mm);
        figures.hold(step.half_stop_mm);
        figures.hold(step.half_stop_loaded_mm);
        figures.hold(step.tip_mm);
    }
    figures.hold(plan.aim_mm);
    figures.hold(plan.closed_loaded_mm);
    figures.hold(plan.half_stop_loaded_mm);
    figures.hold(plan.tip_mm);
    hold(plan.now);
    hold(plan.done);
    hold(plan.notices);
}

void hold(const SpringLoading& loading) {
    const Figures figures("load");
    for (const double value :
         {loading.at_mm, loading.force_n, loading.movement_mm, loading.clears_last_mm,
          loading.peak_stress_mpa, loading.peak_stress_station_mm, loading.wanted_margin}) {
        figures.hold(value);
    }
    for (const auto& value :
         {loading.yield_margin, loading.yield_margin_low, loading.stop_before_mm,
          loading.stop_before_low_mm, loading.rear_pin_force_n, loading.middle_pin_force_n}) {
        figures.hold(value);
    }
    if (!loading.rear_pin_last) return;
    figures.hold(loading.rear_pin_last->hole_to_go_mm);
    figures.hold(loading.rear_pin_last->force_n);
    figures.hold(loading.rear_pin_last->lever_force_n);
}

void hold(const PlasticSet& set) {
    const Figures figures("plastic set");
    for (const double value :
         {set.blade_angle_deg, set.elastic_force_n, set.force_n, set.shift.height_mm,
          set.shift.slope, set.shift_opened.height_mm, set.shift_opened.slope, set.drop_pivot_mm,
          set.drop_dial_mm, set.drop_pad_start_mm, set.drop_pad_end_mm, set.preload_before_mm,
          set.preload_opened_mm, set.preload_after_shakedown_mm}) {
        figures.hold(value);
    }
    for (const PlasticZone& zone : set.zones) {
        figures.hold(zone.strain);
        for (const double value : {zone.from_mm, zone.to_mm, zone.deepest_mm, zone.depth_mm,
                                   zone.turn_rad, zone.residual_surface_mpa}) {
            figures.hold(value);
        }
    }
}

void hold(const Tolerance& tolerance) {
    for (const ResultSpread& result : tolerance.results) {
        const Figures figures("tolerance " + result.local.name);
        hold_local(result.local);
        if (result.sample.count == 0) continue;
        figures.hold(result.sample.mean);
        figures.hold(result.sample.sd);
        figures.hold(result.sample.quantiles);
        for (const VarianceShare& share : result.shares) {
            figures.hold(share.first);
            figures.hold(share.total);
        }
    }
}

void hold(const WholeBack& back) {
    hold_back(back.half_stop);
    hold_back(back.closed);
}

}  // namespace fuzz

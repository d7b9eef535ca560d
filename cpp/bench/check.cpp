// One full check and its parts: three positions, a sweep of one degree, stresses, readings.
#include <benchmark/benchmark.h>

#include "backspring/backspring.hpp"

namespace {

using namespace backspring;

/// An invented pattern with a tapered belly, two pin holes and friction.
Design heron() {
    Design design;
    design.spring.thickness = {{-38.0, 3.2}, {-4.0, 3.8}, {0.0, 3.8},
                               {7.0, 3.1},   {25.0, 2.4}, {36.5, 2.5}};
    design.spring.width_mm = 2.3;
    design.spring.support.rear_pin_mm = 34.0;
    design.spring.holes = {{.center_mm = 0.0, .diameter_mm = 2.0},
                           {.center_mm = -34.0, .diameter_mm = 2.0}};
    design.spring.pad = {.start_mm = 27.0, .end_mm = 36.5};
    design.strength = strength_from_hardness(45.0, {.value = 0.85, .low = 0.80, .high = 0.92});
    design.tang = {.pivot_mm = 32.0,
                   .open_mm = 4.5,
                   .half_stop_mm = 4.62,
                   .closed_mm = 4.6,
                   .corner_open_mm = 0.7,
                   .corner_closed_mm = 0.7,
                   .front_mm = 5.0,
                   .round_end_mm = {},
                   .kick = {}};
    design.fit = {.preload_mm = 0.9, .dial_mm = 33.5};
    design.blade.nail_nick_mm = 35.0;
    design.blade.inertia_kg_mm2 = 52.0;
    design.friction = {.spring = 0.12, .pivot = 0.12, .pivot_pin_mm = 3.2};
    return design;
}

void full_check(benchmark::State& state) {
    const Design design = heron();
    for (auto _ : state) benchmark::DoNotOptimize(check(design));
}
BENCHMARK(full_check)->Unit(benchmark::kMicrosecond)->Repetitions(15)->ReportAggregatesOnly();

void reduce_design(benchmark::State& state) {
    const Design design = heron();
    for (auto _ : state) benchmark::DoNotOptimize(make_action(design));
}
BENCHMARK(reduce_design)->Unit(benchmark::kMicrosecond);

void sweep_one_degree(benchmark::State& state) {
    const Action action = make_action(heron());
    for (auto _ : state) benchmark::DoNotOptimize(sweep(action, 0.0, 180.0, 1.0));
}
BENCHMARK(sweep_one_degree)->Unit(benchmark::kMicrosecond);

void find_three_rests(benchmark::State& state) {
    const Action action = make_action(heron());
    for (auto _ : state) benchmark::DoNotOptimize(find_rests(action.joint, true));
}
BENCHMARK(find_three_rests)->Unit(benchmark::kMicrosecond);

}  // namespace

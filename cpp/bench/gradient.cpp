// A gradient and an influence beside the check that they are measured by: less than three of them.
#include "backspring/sensitivity/gradient.hpp"

#include <benchmark/benchmark.h>

#include "backspring/check/check.hpp"
#include "backspring/sensitivity/influence.hpp"
#include "designs.hpp"

namespace {

using namespace backspring;

void one_check(benchmark::State& state) {
    const Design design = bench::heron();
    for (auto _ : state) benchmark::DoNotOptimize(check(design));
}
BENCHMARK(one_check)->Unit(benchmark::kMicrosecond)->Repetitions(9)->ReportAggregatesOnly();

void one_gradient(benchmark::State& state) {
    const Design design = bench::heron();
    for (auto _ : state) benchmark::DoNotOptimize(gradient(design));
}
BENCHMARK(one_gradient)->Unit(benchmark::kMicrosecond)->Repetitions(9)->ReportAggregatesOnly();

void one_influence(benchmark::State& state) {
    const Design design = bench::heron();
    for (auto _ : state) benchmark::DoNotOptimize(influence(design));
}
BENCHMARK(one_influence)->Unit(benchmark::kMicrosecond)->Repetitions(9)->ReportAggregatesOnly();

}  // namespace

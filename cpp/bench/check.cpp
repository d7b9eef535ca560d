// One full check and its parts: three positions, a sweep of one degree, stresses, readings. And
// what the verdict adds: full check over check without it, goal 1.5 at most.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <vector>

#include "backspring/backspring.hpp"
#include "check/check_parts.hpp"
#include "designs.hpp"

namespace {

using namespace backspring;
using bench::heron;

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

double seconds(const Design& design, bool with_verdict) {
    const auto start = std::chrono::steady_clock::now();
    benchmark::DoNotOptimize(check(design, 1.0, with_verdict));
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

/// Full check and check without the verdict by turns, so that both see the same machine.
void verdict_ratio(benchmark::State& state, const Design& design) {
    std::vector<double> full, bare;
    for (auto _ : state) {
        bare.push_back(seconds(design, false));
        full.push_back(seconds(design, true));
        state.SetIterationTime(full.back());
    }
    state.counters["full_us"] = 1e6 * median(full);
    state.counters["bare_us"] = 1e6 * median(bare);
    state.counters["ratio"] = median(full) / median(bare);
}
BENCHMARK_CAPTURE(verdict_ratio, heron, bench::heron())->UseManualTime()->Iterations(2000);
BENCHMARK_CAPTURE(verdict_ratio, osprey, bench::osprey())->UseManualTime()->Iterations(2000);
BENCHMARK_CAPTURE(verdict_ratio, bittern_yields, bench::bittern())
    ->UseManualTime()
    ->Iterations(2000);

}  // namespace

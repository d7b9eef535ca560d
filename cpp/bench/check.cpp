// What a design's answers cost, as times and as ratios of one run; nothing is judged.
//
//   bench_check           a full check of five designs and its parts, gradient, budget, rows of a
//                         batch, and how cost grows with stations and angles
//   bench_check ROWS      so many rows of eight dimensions besides, on one thread and on two
#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <ctime>
#include <functional>
#include <iomanip>
#include <iostream>
#include <string>
#include <vector>

#include "backspring/backspring.hpp"
#include "backspring/check/error_budget.hpp"
#include "backspring/sensitivity/gradient.hpp"
#include "backspring/sensitivity/influence.hpp"
#include "check/check_parts.hpp"
#include "designs.hpp"

namespace {

using namespace backspring;

volatile double kept = 0.0;  // what is worked out is not left out

double seconds(const std::function<double()>& call) {
    const auto start = std::chrono::steady_clock::now();
    kept = call();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

/// Of the processor: what else runs on the machine does not count.
double processor_seconds(const std::function<double()>& call) {
    const auto now = [] {
        timespec time{};
        clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
        return static_cast<double>(time.tv_sec) + 1e-9 * static_cast<double>(time.tv_nsec);
    };
    const double start = now();
    kept = call();
    return now() - start;
}

/// The median time of each of several calls, taken by turns so that all see the same machine [us].
std::vector<double> medians_us(const std::vector<std::function<double()>>& calls, int repeats) {
    std::vector<std::vector<double>> times(calls.size());
    for (int i = 0; i < repeats; ++i) {
        for (std::size_t k = 0; k < calls.size(); ++k)
            times[k].push_back(processor_seconds(calls[k]));
    }
    std::vector<double> medians;
    for (auto& each : times) {
        const auto middle = each.begin() + static_cast<std::ptrdiff_t>(each.size() / 2);
        std::nth_element(each.begin(), middle, each.end());
        medians.push_back(1e6 * *middle);
    }
    return medians;
}

double stress_of(const Check& check) { return check.travel.peak_stress_mpa; }

Batch some_rows(const Design& design, std::int64_t rows, int threads) {
    BatchSettings settings;
    settings.threads = threads;
    settings.columns = {"peak_pull_n",
                        "travel_peak_stress_mpa",
                        "yield_margin",
                        "reading_loaded_half_stop_mm",
                        "reading_loaded_closed_mm",
                        "reading_unloaded_half_stop_mm",
                        "reading_unloaded_closed_mm",
                        "force_closed_n",
                        "crest_from_closed_deg",
                        "crest_from_half_stop_deg"};
    return check_many(design, draw_rows(design, bench::spreads(), rows, 1), settings);
}

struct Row {
    std::string what;
    std::function<double()> call;
};

std::vector<Row> rows() {
    static const Design heron = bench::heron(), kicked = bench::osprey(), yields = bench::bittern(),
                        two = bench::two_blades();
    static const Action action = make_action(heron), with_kick = make_action(kicked);
    constexpr int batch = 16;
    return {
        {"check", [] { return stress_of(check(heron)); }},
        {"check without verdict", [] { return stress_of(check(heron, false)); }},
        {"check with a kick", [] { return stress_of(check(kicked)); }},
        {"check that yields", [] { return stress_of(check(yields)); }},
        {"check of two blades", [] { return stress_of(check(two)); }},
        {"joint", [] { return make_action(heron).joint.face_mm; }},
        {"contact", [] { return contact_at(action.joint, 50.0).force_n; }},
        {"three rests", [] { return find_rests(action.joint, true).open.force_n; }},
        {"three rests with a kick", [] { return find_rests(with_kick.joint, true).open.force_n; }},
        {"travel",
         [] {
             return Turns(action, {1.0, 91.0, 180.0}).all().back()->friction_nmm;
         }},
        {"stop's band",
         [] {
             Solution solution(heron);
             return stop_band(solution)->stop_n.high;
         }},
        {"error budget", [] { return error_budget(heron, {}).sum.reading_mm.high; }},
        {"gradient", [] { return gradient(heron).value[0]; }},
        {"influence", [] { return influence(heron).value[0]; }},
        {"16 rows of a batch", [] { return some_rows(heron, batch, 1).columns[0].values[0]; }},
    };
}

/// Exponent of cost against a size, from two sizes.
double exponent(double few_us, double many_us, double times) {
    return std::log(many_us / few_us) / std::log(times);
}

void print_growth() {
    const Design few = bench::with_stations(bench::heron(), 20),
                 many = bench::with_stations(bench::heron(), 320);
    const Action action = make_action(bench::heron());
    const auto us =
        medians_us({[&] { return stress_of(check(few)); }, [&] { return stress_of(check(many)); },
                    [&] { return sweep(action, 0.0, 180.0, 2.0).back().peak.stress_mpa; },
                    [&] { return sweep(action, 0.0, 180.0, 0.1).back().peak.stress_mpa; }},
                   101);
    std::cout << "cost of a check grows with stations^" << exponent(us[0], us[1], 16.0)
              << ", of a sweep with angles^" << exponent(us[2], us[3], 20.0) << "\n";
}

void print_batch(std::int64_t rows) {
    double one_s = 0.0;
    for (const int threads : {1, 2}) {
        const double spent =
            seconds([&] { return some_rows(bench::heron(), rows, threads).columns[0].values[0]; });
        if (threads == 1) one_s = spent;
        std::cout << rows << " rows, " << threads << " thread" << (threads > 1 ? "s: " : ": ")
                  << spent << " s, " << one_s / spent << " times as fast as one\n";
    }
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    std::cout << "peak memory " << static_cast<double>(usage.ru_maxrss) / 1024.0 << " MB\n";
}

}  // namespace

int main(int argc, char** argv) {
    std::vector<std::function<double()>> calls;
    const std::vector<Row> all = rows();
    for (const Row& row : all) calls.push_back(row.call);
    const std::vector<double> us = medians_us(calls, 101);
    std::cout << std::fixed << std::setprecision(2);
    for (std::size_t i = 0; i < all.size(); ++i) {
        std::cout << std::left << std::setw(26) << all[i].what << std::right << std::setw(12)
                  << us[i] << " us" << std::setw(10) << us[i] / us[0] << " checks\n";
    }
    print_growth();
    if (argc > 1) print_batch(std::atoll(argv[1]));
}

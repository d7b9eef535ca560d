// A million designs over eight dimensions, in threads: time, ratio and memory, printed.
//
//   bench_batch [rows] [all]     all: every result, the energy of the snap too
#include <sys/resource.h>

#include <chrono>
#include <cstdlib>
#include <ctime>
#include <iostream>
#include <string_view>

#include "backspring/backspring.hpp"
#include "backspring/tolerance/spread.hpp"
#include "designs.hpp"

namespace {

using namespace backspring;

std::vector<Spread> spreads() {
    return {{.key = "fit.preload", .kind = SpreadKind::normal, .size = 0.02},
            {.key = "spring.thickness_offset", .kind = SpreadKind::normal, .size = 0.01},
            {.key = "spring.width", .kind = SpreadKind::normal, .size = 0.01},
            {.key = "spring.rear_pin", .kind = SpreadKind::normal, .size = 0.03},
            {.key = "tang.pivot", .kind = SpreadKind::normal, .size = 0.03},
            {.key = "tang.half_stop", .kind = SpreadKind::normal, .size = 0.01},
            {.key = "tang.corner_radius", .kind = SpreadKind::uniform, .size = 0.05},
            {.key = "spring.yield", .kind = SpreadKind::normal, .size = 30.0}};
}

struct Spent {
    double wall_s;
    double cpu_s;
};

Spent run(const Design& design, const std::vector<Change>& changes, const BatchSettings& settings) {
    const std::clock_t cpu = std::clock();
    const auto wall = std::chrono::steady_clock::now();
    const Batch batch = check_many(design, changes, settings);
    const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - wall;
    const double cpu_s = static_cast<double>(std::clock() - cpu) / CLOCKS_PER_SEC;
    std::int64_t good = 0;
    for (const RowStatus status : batch.status) good += status == RowStatus::ok;
    std::cout << settings.threads << " thread" << (settings.threads > 1 ? "s" : "") << ": "
              << spent.count() << " s, " << cpu_s << " s of processor time, " << good
              << " rows ok\n";
    return {spent.count(), cpu_s};
}

}  // namespace

int main(int argc, char** argv) {
    const std::int64_t rows = argc > 1 ? std::atoll(argv[1]) : 1'000'000;
    const bool all = argc > 2 && std::string_view(argv[2]) == "all";
    const Design design = bench::heron();
    const std::vector<Change> changes = draw_rows(design, spreads(), rows, 1);
    BatchSettings settings;
    if (!all) {
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
    }
    std::cout << rows << " rows, " << changes.size() << " dimensions, "
              << (all ? batch_columns().size() : settings.columns.size()) << " results\n";
    settings.threads = 1;
    const Spent one = run(design, changes, settings);
    settings.threads = 2;
    const Spent two = run(design, changes, settings);
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    std::cout << "two threads are " << one.wall_s / two.wall_s << " times as fast as one; "
              << 1e6 * one.cpu_s / static_cast<double>(rows) << " us a row; peak memory "
              << static_cast<double>(usage.ru_maxrss) / 1024.0 << " MB\n";
}

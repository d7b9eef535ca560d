#include "backspring/tolerance/tolerance.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/require.hpp"

namespace backspring {
namespace {

constexpr const char* kMargin = "yield_margin";
constexpr const char* kHalfStop = "reading_loaded_half_stop_mm";
constexpr const char* kClosed = "reading_loaded_closed_mm";

/// The results of one row by name.
class RowValues {
  public:
    RowValues(const Batch& batch, Eigen::Index row) : batch_(batch), row_(row) {}

    /// NaN where a row has none, or it was not asked for.
    [[nodiscard]] double operator[](const std::string& name) const {
        for (const BatchColumn& column : batch_.columns) {
            if (column.name == name) return column.values[row_];
        }
        return std::nan("");
    }

  private:
    const Batch& batch_;
    Eigen::Index row_;
};

double farthest_from_flush(const RowValues& row) {
    return std::fmax(std::abs(row[kHalfStop]), std::abs(row[kClosed]));
}

double judged(const std::string& target, const RowValues& row) {
    if (target == "pull") return row["peak_pull_n"];
    return target == kMargin ? row[kMargin] : farthest_from_flush(row);
}

std::vector<TargetShare> stated_targets(const Targets& targets) {
    std::vector<TargetShare> shares;
    const auto add = [&](const char* name, std::optional<double> low, std::optional<double> high) {
        if (low || high) shares.push_back({.name = name, .low = low, .high = high});
    };
    add("pull", targets.pull_low_n, targets.pull_high_n);
    add(kMargin, targets.yield_margin, std::nullopt);
    add("reading", std::nullopt, targets.reading_mm);
    return shares;
}

bool meets(const TargetShare& target, const RowValues& row) {
    const double value = judged(target.name, row);
    return std::isfinite(value) && (!target.low || value >= *target.low) &&
           (!target.high || value <= *target.high);
}

void count_rows(Tolerance& result, const Batch& batch, std::int64_t rows) {
    for (Eigen::Index i = 0; i < rows; ++i) {
        const RowStatus status = batch.status[static_cast<std::size_t>(i)];
        if (status == RowStatus::not_run) continue;
        ++result.rows;
        if (status != RowStatus::ok) continue;
        ++result.working;
        const RowValues row(batch, i);
        bool all = true;
        for (TargetShare& target : result.targets) {
            const bool met = meets(target, row);
            target.met += met;
            all = all && met;
        }
        result.good += all;
    }
}

std::vector<VarianceShare> shares_of(const Eigen::ArrayXd& values, const ToleranceRows& plan) {
    if (plan.second == 0) return {};
    const auto part = [&](std::size_t k) {
        const auto at = plan.sample + static_cast<Eigen::Index>(k) * plan.second;
        return Eigen::ArrayXd(values.segment(at, plan.second));
    };
    std::vector<Eigen::ArrayXd> mixed;
    for (std::size_t k = 0; k < plan.changes.size(); ++k) mixed.push_back(part(k + 1));
    return variance_shares(values.head(plan.second), part(0), mixed)
        .value_or(std::vector<VarianceShare>{});
}

}  // namespace

std::vector<std::string> tolerance_columns(const Design& design) {
    std::vector<std::string> names{design.blade.nail_nick_mm ? "peak_pull_n" : "peak_torque_nmm",
                                   "travel_peak_stress_mpa", kMargin};
    if (design.tang.half_stop_mm) names.emplace_back(kHalfStop);
    names.emplace_back(kClosed);
    return names;
}

Tolerance sum_up(const Design& design,
                 const std::vector<Spread>& spreads,
                 const ToleranceRows& plan,
                 const Batch& batch,
                 std::int64_t pieces) {
    Tolerance result;
    result.complete = batch.complete;
    result.targets = stated_targets(design.targets);
    count_rows(result, batch, plan.sample);
    if (result.rows > 0) result.batch = batch_chance(result.good, result.rows, pieces);
    for (LocalSpread& local : local_spreads(design, spreads, tolerance_columns(design))) {
        const auto column =
            std::find_if(batch.columns.begin(), batch.columns.end(),
                         [&](const BatchColumn& c) { return c.name == local.name; });
        result.results.push_back({.local = std::move(local),
                                  .sample = summarise(column->values.head(plan.sample)),
                                  .shares = shares_of(column->values, plan)});
    }
    return result;
}

Tolerance tolerance(const Design& design,
                    const std::vector<Spread>& spreads,
                    const ToleranceSettings& settings,
                    const std::function<bool(std::int64_t)>& keep_going) {
    if (std::vector<Fault> broken = faults(design); !broken.empty()) {
        throw InvalidInput(std::move(broken));
    }
    Requirements rules;
    rules.in_range("pieces", static_cast<double>(settings.pieces), 1.0, 1e9, "");
    rules.throw_if_any();
    const ToleranceRows plan =
        tolerance_rows(design, spreads, settings.rows, settings.seed, settings.with_shares);
    const Batch batch = check_many(
        design, plan.changes,
        {.threads = settings.threads, .chunk_rows = 256, .columns = tolerance_columns(design)},
        keep_going);
    return sum_up(design, spreads, plan, batch, settings.pieces);
}

}  // namespace backspring

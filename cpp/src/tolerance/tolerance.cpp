#include "backspring/tolerance/tolerance.hpp"

#include <algorithm>
#include <cmath>

#include "../many/row.hpp"
#include "backspring/check/targets.hpp"
#include "backspring/core/require.hpp"

namespace backspring {
namespace {

constexpr const char* kPull = "peak_pull_n";
constexpr const char* kMargin = "yield_margin";
constexpr const char* kOpenings = "openings_margin";
constexpr const char* kHalfStop = "reading_loaded_half_stop_mm";
constexpr const char* kClosed = "reading_loaded_closed_mm";

/// The results of one row by name.
class RowValues {
  public:
    RowValues(const Batch& batch, Eigen::Index row) : batch_(batch), row_(row) {}

    /// NaN where a row has none, or it was not asked for.
    [[nodiscard]] double operator[](std::string_view name) const {
        for (const BatchColumn& column : batch_.columns) {
            if (column.name == name) return column.values[row_];
        }
        return std::nan("");
    }

  private:
    const Batch& batch_;
    Eigen::Index row_;
};

std::optional<double> known(double value) {
    return std::isfinite(value) ? std::optional(value) : std::nullopt;
}

/// What a row's targets are held against, see judged_figures().
JudgedFigures judged_figures(const RowValues& row, bool has_half_stop) {
    const Readings loaded{.closed_mm = known(row[kClosed]),
                          .half_stop_mm = known(row[kHalfStop]),
                          .open_mm = known(row[kOpenReading]).value_or(0.0)};
    return {.pull_n = known(row[kPull]),
            .yield_margin = known(row[kMargin]),
            .reading_mm = farthest_from_flush_mm(loaded, has_half_stop),
            .openings_margin = known(row[kOpenings]),
            .edge_gap_mm = known(row[kEdgeGap])};
}

std::vector<TargetShare> stated_targets(const Targets& targets) {
    std::vector<TargetShare> shares;
    for (const TargetResult& each : judge_targets(targets, {})) {
        shares.push_back({.name = each.name,
                          .low = each.low,
                          .high = each.high,
                          .met = 0,
                          .stated = each.stated});
    }
    return shares;
}

/// Counts a row that works; whether it meets every target.
bool count_targets(Tolerance& result, const Design& design, const RowValues& row) {
    JudgedFigures figures = judged_figures(row, design.own().tang.half_stop_mm.has_value());
    auto judged = judge_targets(design.targets, figures);
    if (design.blades.size() > 1) {
        figures.pull_n = known(row[kLeastPull]);
        judged = worst_targets({judged, judge_targets(design.targets, figures)});
    }
    bool all = true;
    for (std::size_t i = 0; i < judged.size(); ++i) {
        result.targets[i].met += judged[i].met;
        all = all && judged[i].met;
    }
    return all;
}

void count_rows(Tolerance& result, const Design& design, const Batch& batch, std::int64_t rows) {
    for (Eigen::Index i = 0; i < rows; ++i) {
        const RowStatus status = batch.status[static_cast<std::size_t>(i)];
        if (status == RowStatus::not_run) continue;
        ++result.rows;
        if (status != RowStatus::ok) continue;
        ++result.working;
        result.good += count_targets(result, design, RowValues(batch, i));
    }
}

/// Results whose spread is told.
std::vector<std::string> followed_columns(const Design& design) {
    std::vector<std::string> names{design.own().blade.nail_nick_mm ? kPull : "peak_torque_nmm",
                                   "travel_peak_stress_mpa", kMargin};
    if (design.own().tang.half_stop_mm) names.emplace_back(kHalfStop);
    names.emplace_back(kClosed);
    if (design.blades.size() > 1) names.emplace_back(kOpenReading);
    return names;
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
    std::vector<std::string> names = followed_columns(design);
    if (design.targets.openings) names.emplace_back(kOpenings);
    if (design.targets.edge_gap_mm) names.emplace_back(kEdgeGap);
    if (design.blades.size() > 1) names.emplace_back(kLeastPull);
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
    count_rows(result, design, batch, plan.sample);
    if (result.rows > 0) result.batch = batch_chance(result.good, result.rows, pieces);
    for (LocalSpread& local : local_spreads(design, spreads, followed_columns(design))) {
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

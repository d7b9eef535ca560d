#include "backspring/tolerance/local_spread.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "competing_strokes.hpp"

namespace backspring {
namespace {

constexpr double kStepShare = 0.01;

std::vector<Change> unchanged(const std::vector<Spread>& spreads,
                              const std::vector<double>& middle,
                              Eigen::Index rows) {
    std::vector<Change> changes;
    for (std::size_t k = 0; k < spreads.size(); ++k) {
        changes.push_back({spreads[k].key, Eigen::ArrayXd::Constant(rows, middle[k])});
    }
    return changes;
}

/// The design and small departures of each dimension: row 0 is the design itself; dimension k has
/// rows 1 + 2k and 2 + 2k, low and high.
Batch checked_about(const Design& design,
                    const std::vector<Spread>& spreads,
                    const std::vector<double>& middle,
                    const std::vector<std::string>& columns) {
    const auto count = static_cast<Eigen::Index>(spreads.size());
    std::vector<Change> near = unchanged(spreads, middle, 1 + 2 * count);
    for (Eigen::Index k = 0; k < count; ++k) {
        const auto at = static_cast<std::size_t>(k);
        const double step = kStepShare * farthest(spreads[at]);
        near[at].values[1 + 2 * k] -= step;
        near[at].values[2 + 2 * k] += step;
    }
    return check_many(design, near, {.threads = 1, .chunk_rows = 256, .columns = columns});
}

/// A result, or a stroke's own, about the design.
StrokeSpread about(const std::string& name,
                   const Eigen::ArrayXd& values,
                   const std::vector<Spread>& spreads) {
    StrokeSpread found{.name = name, .nominal = values[0], .slopes = {}};
    double squares = 0.0;
    for (std::size_t k = 0; k < spreads.size(); ++k) {
        const double step = kStepShare * farthest(spreads[k]);
        const auto low = static_cast<Eigen::Index>(1 + 2 * k);
        const double rise = step > 0.0 ? (values[low + 1] - values[low]) / (2.0 * step) : 0.0;
        found.slopes.push_back(rise);
        const double part = rise * standard_deviation(spreads[k]);
        squares += part * part;
    }
    found.root_sum_square_sd = std::sqrt(squares);
    return found;
}

/// Designs with every dimension at an end of its tolerance, two rows a direction: against it and
/// with it.
class Ends {
  public:
    Ends(const std::vector<Spread>& spreads, const std::vector<double>& middle)
        : spreads_(spreads), middle_(middle) {}

    void add(const std::vector<double>& slopes) { directions_.push_back(slopes); }
    [[nodiscard]] Eigen::Index rows() const {
        return 2 * static_cast<Eigen::Index>(directions_.size());
    }
    [[nodiscard]] std::vector<Change> changes() const {
        std::vector<Change> ends = unchanged(spreads_, middle_, rows());
        for (Eigen::Index i = 0; i < rows() / 2; ++i) {
            for (std::size_t k = 0; k < spreads_.size(); ++k) {
                const double slope = directions_[static_cast<std::size_t>(i)][k];
                const double end = std::copysign(farthest(spreads_[k]), slope);
                ends[k].values[2 * i] -= end;
                ends[k].values[2 * i + 1] += end;
            }
        }
        return ends;
    }

  private:
    const std::vector<Spread>& spreads_;
    const std::vector<double>& middle_;
    std::vector<std::vector<double>> directions_;
};

/// Least and greatest of those that are numbers.
void set_worst(LocalSpread& local, const Eigen::ArrayXd& values) {
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    local.worst_low = local.worst_high = none;
    for (const double value : values) {
        local.worst_low = std::fmin(local.worst_low, value);
        local.worst_high = std::fmax(local.worst_high, value);
    }
}

std::vector<std::string> with_strokes(const std::vector<std::string>& columns) {
    std::vector<std::string> all = columns;
    for (const std::string& name : columns) {
        for (std::string& own : columns_of_strokes(name)) all.push_back(std::move(own));
    }
    return all;
}

}  // namespace

std::vector<LocalSpread> local_spreads(const Design& design,
                                       const std::vector<Spread>& spreads,
                                       const std::vector<std::string>& columns) {
    const std::vector<double> middle = nominals(design, spreads);
    if (columns.empty()) return {};
    const Batch near = checked_about(design, spreads, middle, with_strokes(columns));
    const auto values_of = [&](const std::string& name) -> const Eigen::ArrayXd& {
        return std::ranges::find(near.columns, name, &BatchColumn::name)->values;
    };
    std::vector<LocalSpread> locals;
    std::vector<Eigen::Index> starts;
    Ends ends(spreads, middle);
    for (const std::string& name : columns) {
        const StrokeSpread whole = about(name, values_of(name), spreads);
        std::vector<StrokeSpread> strokes;
        for (const std::string& own : columns_of_strokes(name)) {
            strokes.push_back(about(own, values_of(own), spreads));
        }
        locals.push_back(put_together(whole, std::move(strokes), spreads));
        starts.push_back(ends.rows());
        for (const auto& direction : directions_of(locals.back())) ends.add(direction);
    }
    starts.push_back(ends.rows());
    const Batch worst =
        check_many(design, ends.changes(), {.threads = 1, .chunk_rows = 256, .columns = columns});
    for (std::size_t r = 0; r < locals.size(); ++r) {
        set_worst(locals[r], worst.columns[r].values.segment(starts[r], starts[r + 1] - starts[r]));
    }
    return locals;
}

}  // namespace backspring

#include "backspring/tolerance/local_spread.hpp"

#include <cmath>

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

double slope(const Eigen::ArrayXd& values, Eigen::Index low_row, double step) {
    return step > 0.0 ? (values[low_row + 1] - values[low_row]) / (2.0 * step) : 0.0;
}

}  // namespace

std::vector<LocalSpread> local_spreads(const Design& design,
                                       const std::vector<Spread>& spreads,
                                       const std::vector<std::string>& columns) {
    const std::vector<double> middle = nominals(design, spreads);
    const auto count = static_cast<Eigen::Index>(spreads.size());
    const auto results = static_cast<Eigen::Index>(columns.size());
    const BatchSettings settings{.threads = 1, .chunk_rows = 256, .columns = columns};
    const auto at = [](Eigen::Index i) { return static_cast<std::size_t>(i); };

    // Row 0 is the design itself; dimension k has rows 1 + 2k and 2 + 2k, low and high.
    std::vector<Change> near = unchanged(spreads, middle, 1 + 2 * count);
    for (Eigen::Index k = 0; k < count; ++k) {
        const double step = kStepShare * farthest(spreads[at(k)]);
        near[at(k)].values[1 + 2 * k] -= step;
        near[at(k)].values[2 + 2 * k] += step;
    }
    const Batch about = check_many(design, near, settings);

    std::vector<LocalSpread> locals;
    std::vector<Change> ends = unchanged(spreads, middle, 2 * results);
    for (Eigen::Index r = 0; r < results; ++r) {
        const Eigen::ArrayXd& values = about.columns[at(r)].values;
        LocalSpread local;
        local.name = columns[at(r)];
        local.nominal = values[0];
        double squares = 0.0;
        for (Eigen::Index k = 0; k < count; ++k) {
            const Spread& spread = spreads[at(k)];
            const double rise = slope(values, 1 + 2 * k, kStepShare * farthest(spread));
            local.slopes.push_back(rise);
            const double part = rise * standard_deviation(spread);
            squares += part * part;
            const double end = std::copysign(farthest(spread), rise);
            ends[at(k)].values[2 * r] -= end;
            ends[at(k)].values[2 * r + 1] += end;
        }
        local.root_sum_square_sd = std::sqrt(squares);
        locals.push_back(std::move(local));
    }
    if (results == 0) return locals;
    const Batch worst = check_many(design, ends, settings);
    for (Eigen::Index r = 0; r < results; ++r) {
        locals[at(r)].worst_low = worst.columns[at(r)].values[2 * r];
        locals[at(r)].worst_high = worst.columns[at(r)].values[2 * r + 1];
    }
    return locals;
}

}  // namespace backspring

#include "backspring/tolerance/sample_summary.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace backspring {
namespace {

double quantile(const std::vector<double>& ordered, double probability) {
    const double place = probability * static_cast<double>(ordered.size() - 1);
    const auto below = static_cast<std::size_t>(place);
    const std::size_t above = std::min(below + 1, ordered.size() - 1);
    return std::lerp(ordered[below], ordered[above], place - std::floor(place));
}

}  // namespace

SampleSummary summarise(const Eigen::ArrayXd& values) {
    std::vector<double> ordered;
    for (const double value : values) {
        if (std::isfinite(value)) ordered.push_back(value);
    }
    SampleSummary summary;
    summary.count = static_cast<std::int64_t>(ordered.size());
    if (ordered.empty()) {
        constexpr double none = std::numeric_limits<double>::quiet_NaN();
        summary.mean = summary.sd = none;
        summary.quantiles.assign(kQuantiles.size(), none);
        return summary;
    }
    std::sort(ordered.begin(), ordered.end());
    const double count = static_cast<double>(ordered.size());
    // Summed from the least, so that values all alike have no spread, not even by rounding.
    double sum = 0.0, squares = 0.0;
    for (const double value : ordered) sum += value - ordered.front();
    summary.mean = ordered.front() + sum / count;
    for (const double value : ordered) squares += (value - summary.mean) * (value - summary.mean);
    summary.sd = std::sqrt(squares / count);
    for (const double p : kQuantiles) summary.quantiles.push_back(quantile(ordered, p));
    return summary;
}

}  // namespace backspring

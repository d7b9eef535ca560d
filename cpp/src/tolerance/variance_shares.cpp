#include "backspring/tolerance/variance_shares.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/require.hpp"

namespace backspring {
namespace {

// A result that varies less than this share of its size does not vary.
constexpr double kNoSpread = 1e-12;

void require_alike(const Eigen::ArrayXd& a,
                   const Eigen::ArrayXd& b,
                   const std::vector<Eigen::ArrayXd>& mixed) {
    Requirements rules;
    const auto alike = [&](const Eigen::ArrayXd& column) { return column.size() == a.size(); };
    rules.require(alike(b) && std::all_of(mixed.begin(), mixed.end(), alike), "samples", [&] {
        return "must have as many rows as the first, " + std::to_string(a.size());
    });
    rules.throw_if_any();
}

}  // namespace

std::optional<std::vector<VarianceShare>> variance_shares(
    const Eigen::ArrayXd& a, const Eigen::ArrayXd& b, const std::vector<Eigen::ArrayXd>& mixed) {
    require_alike(a, b, mixed);
    std::vector<Eigen::Index> whole;
    for (Eigen::Index i = 0; i < a.size(); ++i) {
        double sum = a[i] + b[i];
        for (const Eigen::ArrayXd& column : mixed) sum += column[i];
        if (std::isfinite(sum)) whole.push_back(i);
    }
    if (whole.size() < 2) return std::nullopt;
    const double count = static_cast<double>(whole.size());
    double sum = 0.0, squares = 0.0;
    for (const Eigen::Index i : whole) sum += a[i] + b[i];
    const double mean = sum / (2.0 * count);
    for (const Eigen::Index i : whole) {
        squares += (a[i] - mean) * (a[i] - mean) + (b[i] - mean) * (b[i] - mean);
    }
    const double variance = squares / (2.0 * count);
    if (!(std::sqrt(variance) > kNoSpread * std::abs(mean))) return std::nullopt;
    std::vector<VarianceShare> shares;
    for (const Eigen::ArrayXd& column : mixed) {
        double first = 0.0, total = 0.0;
        for (const Eigen::Index i : whole) {
            const double change = column[i] - a[i];
            // Taken from the mean, which changes nothing on average and steadies it much.
            first += (b[i] - mean) * change;
            total += change * change;
        }
        shares.push_back(
            {.first = first / (count * variance), .total = total / (2.0 * count * variance)});
    }
    return shares;
}

}  // namespace backspring

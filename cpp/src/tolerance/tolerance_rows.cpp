#include "backspring/tolerance/tolerance_rows.hpp"

#include <bit>

#include "backspring/tolerance/quasi_random.hpp"

namespace backspring {

ToleranceRows tolerance_rows(const Design& design,
                             const std::vector<Spread>& spreads,
                             std::int64_t rows,
                             std::uint32_t seed,
                             bool with_shares) {
    ToleranceRows plan{.sample = rows, .changes = draw_rows(design, spreads, rows, seed)};
    const auto count = static_cast<Eigen::Index>(spreads.size());
    const auto room = static_cast<std::uint64_t>(rows / (count + 1));
    if (!with_shares || room < 2) return plan;
    plan.second = static_cast<std::int64_t>(std::bit_floor(room));
    const std::vector<double> middle = nominals(design, spreads);
    for (Eigen::Index k = 0; k < count; ++k) {
        const auto at = static_cast<std::size_t>(k);
        Eigen::ArrayXd& values = plan.changes[at].values;
        const Eigen::ArrayXd first = values;
        values.resize(rows + plan.second * (count + 1));
        values.head(rows) = first;
        Eigen::ArrayXd second(plan.second);
        for (Eigen::Index i = 0; i < plan.second; ++i) {
            const double u =
                quasi_random(static_cast<std::uint32_t>(i), static_cast<int>(count + k), seed);
            second[i] = middle[at] + departure(spreads[at], u);
        }
        values.segment(rows, plan.second) = second;
        for (Eigen::Index j = 0; j < count; ++j) {
            auto mixed = values.segment(rows + (1 + j) * plan.second, plan.second);
            if (j == k) {
                mixed = second;
            } else {
                mixed = first.head(plan.second);
            }
        }
    }
    return plan;
}

}  // namespace backspring

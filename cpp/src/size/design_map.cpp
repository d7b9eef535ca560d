#include "backspring/size/design_map.hpp"

#include <limits>

#include "backspring/core/require.hpp"
#include "size_trial.hpp"

namespace backspring {
namespace {

constexpr double kMostPairs = 1e6;

void require(const Design& design,
             const SizeDimension& x,
             const Eigen::ArrayXd& x_mm,
             const SizeDimension& y,
             const Eigen::ArrayXd& y_mm) {
    require_dimensions(design, {x, y});
    Requirements rules;
    const auto sizes = [&](const SizeDimension& dimension, const Eigen::ArrayXd& mm) {
        rules.require(mm.size() > 0, dimension.key,
                      [] { return std::string("needs at least one size"); });
        for (const double size : mm) {
            if (!rules.positive(dimension.key, size, 500.0, "mm")) return;
        }
    };
    sizes(x, x_mm);
    sizes(y, y_mm);
    const double pairs = static_cast<double>(x_mm.size()) * static_cast<double>(y_mm.size());
    rules.require(pairs <= kMostPairs, "sizes",
                  [] { return std::string("must give at most 1000000 pairs"); });
    rules.throw_if_any();
}

}  // namespace

DesignMap design_map(const Design& design,
                     const SizeDimension& x,
                     const Eigen::ArrayXd& x_mm,
                     const SizeDimension& y,
                     const Eigen::ArrayXd& y_mm) {
    require(design, x, x_mm, y, y_mm);
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    DesignMap map{.x_mm = x_mm,
                  .y_mm = y_mm,
                  .pull_n = Eigen::ArrayXXd::Constant(y_mm.size(), x_mm.size(), none),
                  .yield_margin = Eigen::ArrayXXd::Constant(y_mm.size(), x_mm.size(), none)};
    for (Eigen::Index j = 0; j < x_mm.size(); ++j) {
        const Design column = with_size(design, x, x_mm[j]);
        for (Eigen::Index i = 0; i < y_mm.size(); ++i) {
            const Trial trial = try_design(with_size(column, y, y_mm[i]));
            if (!trial.works()) continue;
            map.pull_n(i, j) = trial.pull_n.value_or(none);
            map.yield_margin(i, j) = trial.yield_margin;
        }
    }
    return map;
}

}  // namespace backspring

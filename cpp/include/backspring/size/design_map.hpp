#pragma once

#include <Eigen/Core>

#include "backspring/size/size_dimension.hpp"

namespace backspring {

/// Pull and margin over two measures, to see where a wanted spring lies.
struct DesignMap {
    Eigen::ArrayXd x_mm;           ///< sizes of the first measure [mm]
    Eigen::ArrayXd y_mm;           ///< sizes of the second measure [mm]
    Eigen::ArrayXXd pull_n;        ///< peak pull, opening; a row a y, NaN where there is none [N]
    Eigen::ArrayXXd yield_margin;  ///< at the worst of the travel; NaN as above
};

/// Works out every pair of sizes.
///
/// A pair that breaks a rule of a design or does not work as a slip joint is NaN.
///
/// @param x_mm, y_mm  sizes, at least one each, finite, at most a million pairs
/// @throws InvalidInput  a dimension that cannot be sized, sizes that are none, too many pairs
[[nodiscard]] DesignMap design_map(const Design& design,
                                   const SizeDimension& x,
                                   const Eigen::ArrayXd& x_mm,
                                   const SizeDimension& y,
                                   const Eigen::ArrayXd& y_mm);

}  // namespace backspring

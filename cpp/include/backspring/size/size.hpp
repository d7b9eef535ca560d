#pragma once

#include <optional>
#include <vector>

#include "backspring/core/notice.hpp"
#include "backspring/size/size_dimension.hpp"

namespace backspring {

/// What a spring is sized for.
struct SizeTarget {
    std::optional<double> pull_n;        ///< peak pull, opening, to be met exactly [N]
    std::optional<double> yield_margin;  ///< yield stress over worst stress of the travel, at least
};

/// One way to size the spring.
struct SizeAnswer {
    Design design;                 ///< with the measures put in
    std::vector<double> sizes_mm;  ///< a measure each, in the order asked for [mm]
    std::optional<double> pull_n;  ///< peak pull, opening; none without a nail nick [N]
    double yield_margin = 0.0;     ///< at the worst of the travel
};

/// All ways found, or what stands in the way.
struct SizeResult {
    std::vector<SizeAnswer> answers;    ///< those that meet the target; none: it cannot be met
    std::optional<SizeAnswer> nearest;  ///< when none does: the nearest that can be made
    std::vector<Notice> limits;         ///< when none does: what holds it there
};

/// Finds the measures of a spring for a pull and a yield margin.
///
/// One measure free: every size between its bounds that gives the pull, told apart by a scan and
/// solved to rounding; those with too small a margin are dropped. Without a pull the margin itself
/// is met. Two free measures: where pull and margin are both as wanted, by Newton's method on the
/// gradient, and where the pull is as wanted with margin to spare on a bound. Measures that come in
/// stock sizes are tried size by size.
///
/// When nothing answers: the nearest design keeps to bounds, rules and margin and comes closest to
/// the pull; when not even the margin can be had, it has the largest.
///
/// @param dimensions  free measures, at most two besides those with stock sizes
/// @throws InvalidInput  a broken rule; a pull without a nail nick; no target; two free measures
///                       without both targets
/// @note  an answer between two points of the scan that both lie on one side can be missed where
///        the pull turns back within a thirtieth of the bounds
[[nodiscard]] SizeResult size(const Design& design,
                              const SizeTarget& target,
                              const std::vector<SizeDimension>& dimensions);

}  // namespace backspring

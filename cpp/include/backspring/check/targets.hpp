#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backspring/check/solution.hpp"

namespace backspring {

/// One target and whether the design meets it.
struct TargetResult {
    std::string name;             ///< key in the design file's [targets]
    std::optional<double> value;  ///< what the design does; none where that cannot be told
    std::optional<double> low;    ///< least allowed
    std::optional<double> high;   ///< greatest allowed
    bool met = false;             ///< inside; a stated one never so without a value
    bool stated = true;           ///< in the design file; a yield margin of 1 is judged unstated
};

/// What targets are held against; none where the design does not tell it.
struct JudgedFigures {
    std::optional<double> pull_n;           ///< largest pull against opening, at the nail nick [N]
    std::optional<double> yield_margin;     ///< yield stress over worst stress of the travel
    std::optional<double> reading_mm;       ///< farthest from flush, loaded [mm]
    std::optional<double> openings_margin;  ///< how many times the stress may rise for that life
    std::optional<double> edge_gap_mm;      ///< left under the edge as a hand eases it shut [mm]
};

/// What a design's targets are held against; only what a target is stated for is worked out.
[[nodiscard]] JudgedFigures judged_figures(Solution& solution);

/// Farthest of the loaded readings from flush [mm]; none unless the blade has all its positions.
///
/// @param has_half_stop  whether the tang has that face
[[nodiscard]] std::optional<double> farthest_from_flush_mm(const Readings& loaded,
                                                           bool has_half_stop);

/// How many times over the spring's stress could be as high for the openings asked of it.
///
/// @returns  none where no life is asked for, or the steel's tensile strength is not known
[[nodiscard]] std::optional<double> openings_margin(Solution& solution);

/// The gap left under the edge as a hand eases the blade shut [mm].
///
/// @returns  none where no gap is asked for, or the design does not tell it
[[nodiscard]] std::optional<double> edge_gap_left_mm(Solution& solution);

/// Whether a value is known and within limits, to a billionth of them: sizing solves for a limit
/// and ends on it but for rounding.
[[nodiscard]] bool is_within(const std::optional<double>& value,
                             const std::optional<double>& low,
                             const std::optional<double>& high);

/// Every target that is stated, met or missed: the one judge of every question.
///
/// What cannot be told is missed, not left out. Where no yield margin is stated, 1 at the likely
/// strength is judged: a spring without stress meets that.
[[nodiscard]] std::vector<TargetResult> judge_targets(const Targets& targets,
                                                      const JudgedFigures& figures);

/// The worst of several judgements of the same targets: missed ones first, then the closest.
[[nodiscard]] std::vector<TargetResult> worst_targets(
    const std::vector<std::vector<TargetResult>>& judged);

}  // namespace backspring

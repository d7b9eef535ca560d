#pragma once

#include <optional>
#include <vector>

#include "backspring/grind/grind_table.hpp"

namespace backspring {

/// One place to take steel off for a wanted pull, and what the spring is after it.
struct GrindWay {
    GrindFace face = GrindFace::back;  ///< which face
    GrindRegion region;                ///< from where to where
    std::optional<GrindRow> after;     ///< the spring with that pull; none where it cannot be had
    std::optional<Notice> refused;     ///< why not
};

/// The same pull off every face: what each costs in margin and readings.
///
/// Back whole, back ahead of the middle pin, back ahead of a third of the way to the pivot, where
/// it leaves the most loaded steel alone, belly, pad.
///
/// @param pull_n  peak pull wanted, opening [N], > 0
/// @returns       in that order
/// @throws InvalidInput  a bad design or pull, or no nail nick
[[nodiscard]] std::vector<GrindWay> ways_to_pull(const Design& design, double pull_n);

}  // namespace backspring

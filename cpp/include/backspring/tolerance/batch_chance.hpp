#pragma once

#include <cstdint>

namespace backspring {

/// How many of a sample meet the targets, and what that says of a batch of knives.
struct BatchChance {
    double share = 0.0;        ///< of the sample that is good
    double share_low = 0.0;    ///< 95 % limits of the share
    double share_high = 0.0;   ///< see share_low
    double chance = 0.0;       ///< that every knife of the batch is good
    double chance_low = 0.0;   ///< from share_low
    double chance_high = 0.0;  ///< from share_high
};

/// Chance that a whole batch is good, share^pieces, with 95 % limits.
///
/// @param good    of the sample, 0 to count
/// @param count   size of the sample, at least 1
/// @param pieces  knives in the batch, at least 1
/// @throws InvalidInput  outside these
/// @source limits after Clopper and Pearson, Biometrika 26 (1934), 404-413
/// @note   the limits are those of random draws; quasi-random ones are steadier, so they are wide
[[nodiscard]] BatchChance batch_chance(std::int64_t good, std::int64_t count, std::int64_t pieces);

}  // namespace backspring

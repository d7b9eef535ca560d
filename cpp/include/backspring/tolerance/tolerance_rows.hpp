#pragma once

#include <cstdint>
#include <vector>

#include "backspring/tolerance/spread.hpp"

namespace backspring {

/// The rows a tolerance study checks, in turn: the sample; then, for shares of variance, a second
/// sample, and the head of the first with one dimension at a time from the second.
struct ToleranceRows {
    std::int64_t sample = 0;      ///< rows of the sample
    std::int64_t second = 0;      ///< rows of the second sample, 0 without shares of variance
    std::vector<Change> changes;  ///< sample + second (1 + number of spreads) rows
};

/// Lays out the rows of a study.
///
/// The second sample is the largest power of two for which the shares cost no more rows than the
/// sample itself.
///
/// @param rows         of the sample, 1 to 10 million
/// @param with_shares  whether shares of variance are wanted
/// @throws InvalidInput  see require_spreads()
[[nodiscard]] ToleranceRows tolerance_rows(const Design& design,
                                           const std::vector<Spread>& spreads,
                                           std::int64_t rows,
                                           std::uint32_t seed,
                                           bool with_shares);

}  // namespace backspring

#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "backspring/many/batch.hpp"

namespace backspring {

/// How the values of one dimension lie about the design's own.
enum class SpreadKind {
    normal,   ///< bell curve; the size is its standard deviation
    uniform,  ///< all alike within limits; the size is half their distance
};

/// What the bench makes of one number of a design.
struct Spread {
    std::string key;                       ///< see dimensions()
    SpreadKind kind = SpreadKind::normal;  ///< shape
    double size = 0.0;                     ///< standard deviation or half-width [mm], [MPa], ratio
};

/// Standard deviation of a spread.
[[nodiscard]] double standard_deviation(const Spread& spread);

/// Farthest departure that a worst case counts with: three standard deviations, or the half-width.
///
/// @note three standard deviations hold 99.73 % of a normal spread
[[nodiscard]] double farthest(const Spread& spread);

/// Departure from the design's own value at a probability.
///
/// @param probability  of lying lower, greater than 0 and less than 1
[[nodiscard]] double departure(const Spread& spread, double probability);

/// Refuses spreads that do not fit a design.
///
/// @throws InvalidInput  none at all, an unknown key, one given twice, a size below 0, a number the
///                       design does not have or has several of, more than 24 spreads
void require_spreads(const Design& design, const std::vector<Spread>& spreads);

/// The design's own value of each spread's dimension.
[[nodiscard]] std::vector<double> nominals(const Design& design,
                                           const std::vector<Spread>& spreads);

/// Quasi-random rows of designs, the same for the same seed.
///
/// @param rows   1 to 10 million
/// @throws InvalidInput  see require_spreads()
[[nodiscard]] std::vector<Change> draw_rows(const Design& design,
                                            const std::vector<Spread>& spreads,
                                            std::int64_t rows,
                                            std::uint32_t seed);

}  // namespace backspring

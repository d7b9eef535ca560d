#pragma once

#include <array>
#include <cmath>
#include <cstddef>

namespace backspring::detail {

// Below this relative taper the closed form loses digits to cancellation; the series does not.
inline constexpr double kSmallTaper = 0.1;
inline constexpr int kTerms = 20;

using Series = std::array<double, kTerms>;

/// The first terms of a series in -z, in four short chains instead of a long one.
template <std::size_t terms>
[[nodiscard]] double first_terms(const Series& series, double z) {
    const double square = z * z, fourth = square * square;
    double even = 0.0, odd = 0.0, even2 = 0.0, odd2 = 0.0;
    for (std::size_t j = terms; j > 0; j -= 4) {
        even = even * fourth + series[j - 4];
        odd = odd * fourth + series[j - 3];
        even2 = even2 * fourth + series[j - 2];
        odd2 = odd2 * fourth + series[j - 1];
    }
    return (even + square * even2) - z * (odd + square * odd2);
}

[[nodiscard]] inline double sum_of(const Series& series, double z) {
    // What follows is below rounding: j/2 z^j at most of the first term left out.
    const double size = std::abs(z);
    if (size < 0.005) return first_terms<8>(series, z);
    return size < 0.03 ? first_terms<12>(series, z) : first_terms<kTerms>(series, z);
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

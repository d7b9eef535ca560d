#pragma once

#include <array>
#include <cstddef>
#include <span>

namespace backspring::detail {

/// Into so many parts a way is cut at first; twice as many keep the places of the cuts.
inline constexpr std::size_t kFewestParts = 4;

/// Chebyshev's places along a way, both ends among them, as shares of it.
///
/// (1 - cos(pi k/parts))/2. A polynomial through values of a smooth function there tells it the
/// closer the more there are, by as many digits more each time.
///
/// @param parts  1, or 4, 8, 16 or 32
/// @param k      0 to parts
[[nodiscard]] double chebyshev_share(std::size_t parts, std::size_t k);

/// Weight of the value at such a place in the barycentric form of the polynomial.
///
/// @source J.-P. Berrut and L. N. Trefethen, SIAM Review 46 (2004)
[[nodiscard]] constexpr double chebyshev_weight(std::size_t parts, std::size_t k) {
    const double at_end = k == 0 || k == parts ? 0.5 : 1.0;
    return k % 2 == 0 ? at_end : -at_end;
}

/// So many places a piece has at most.
inline constexpr std::size_t kMostPlaces = 33;

/// A number for each place of a piece, or for each part between two; the rest is not set.
using AtPlaces = std::array<double, kMostPlaces>;

/// Integrals of the polynomial through values at such places, between each and the next.
///
/// @param values  at all of them
/// @returns       as if the whole way were 1 long
/// @source C. W. Clenshaw and A. R. Curtis, Numer. Math. 2 (1960), of each part by itself
[[nodiscard]] AtPlaces integrals_between(std::span<const double> values);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

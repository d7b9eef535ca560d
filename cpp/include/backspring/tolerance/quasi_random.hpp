#pragma once

#include <cstdint>

namespace backspring {

/// Most dimensions a quasi-random point can have.
inline constexpr int kMostQuasiDimensions = 48;

/// One coordinate of a point of Sobol's sequence as a fraction of 2^32.
///
/// Points come in the order of their index, not of its Gray code; 0 to 2^m - 1 are the same set.
///
/// @param index      which point
/// @param dimension  which coordinate, 0 to 47
/// @throws OutOfRange  no such dimension
/// @source Joe and Kuo, SIAM J. Sci. Comput. 30 (2008), 2635-2654
[[nodiscard]] std::uint32_t sobol_bits(std::uint32_t index, int dimension);

/// One coordinate of a scrambled point, greater than 0 and less than 1.
///
/// Each digit is flipped by a hash of the digits before it, so a point needs no other point: the
/// same on any number of threads. The net keeps its evenness, and its mean error over seeds is 0.
///
/// @param seed  another one gives another, equally even set
/// @source Owen, scrambled nets; by hash after Burley, J. Comput. Graph. Tech. 9(4) (2020), 1-20
[[nodiscard]] double quasi_random(std::uint32_t index, int dimension, std::uint32_t seed);

}  // namespace backspring

#pragma once

#include <optional>

#include "backspring/core/function_ref.hpp"

namespace backspring {

/// Root of f between a and b, where its values fa and fb have opposite signs.
///
/// A jump through zero counts as a root: the bracket closes on it.
///
/// @param bits  to which the root is wanted
/// @source      G. E. Alefeld, F. A. Potra and Y. Shi, ACM TOMS 21 (1995), algorithm 748, as in
///              Boost.Math
[[nodiscard]] double find_root(
    FunctionRef f, double a, double b, double fa, double fb, int bits = 50);

/// Root of f between a and b or, where f jumps through zero, the first place beyond the jump.
///
/// @param a, b  as for find_root(); b lies beyond
[[nodiscard]] double find_crossing(FunctionRef f, double a, double b, double fa, double fb);

/// Where two nearly straight branches of f meet in a point, near a place.
[[nodiscard]] double find_point(FunctionRef f, double place, double doubt);

/// Place of the greatest value of f between a and b, to about 1e-5 of their size, or to fewer bits.
///
/// Where f comes to a point its value lacks as much as its place does, so that is found to rounding
/// error; but not where fewer bits are wanted.
///
/// @source  R. P. Brent, Algorithms for Minimization without Derivatives, 1973, as in Boost.Math
[[nodiscard]] double find_maximum(FunctionRef f,
                                  double a,
                                  double b,
                                  std::optional<int> fewer_bits = {});

}  // namespace backspring

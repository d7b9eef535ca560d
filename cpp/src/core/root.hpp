#pragma once

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>

namespace backspring {

/// Root of f between a and b, where its values fa and fb have opposite signs.
///
/// A jump through zero counts as a root: the bracket closes on it.
///
/// @param bits  to which the root is wanted
template <class F>
double find_root(F f, double a, double b, double fa, double fb, int bits = 50) {
    if (fa == 0.0) return a;
    if (fb == 0.0) return b;
    if (a == b) return a;
    if (a > b) return find_root(f, b, a, fb, fa, bits);
    // What is left at a root is rounding; called nothing, it spares shrinking the bracket to a
    // point.
    const double nothing = 1e-14 * std::max(std::abs(fa), std::abs(fb));
    const auto rounded = [&](double x) {
        const double value = f(x);
        return std::abs(value) < nothing ? 0.0 : value;
    };
    std::uintmax_t rounds = 100;
    const auto close_enough = boost::math::tools::eps_tolerance<double>(bits);
    const auto [low, high] =
        boost::math::tools::toms748_solve(rounded, a, b, fa, fb, close_enough, rounds);
    return 0.5 * (low + high);
}

/// Place of the greatest value of f between a and b, to about 1e-5 of their size or to fewer bits.
template <class F>
double find_maximum(F f, double a, double b, int bits = 18) {
    std::uintmax_t rounds = 60;
    const auto negated = [&f](double x) { return -f(x); };
    return boost::math::tools::brent_find_minima(negated, a, b, bits, rounds).first;
}

}  // namespace backspring

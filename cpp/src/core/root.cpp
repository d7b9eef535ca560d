#include "backspring/core/root.hpp"

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>
#include <utility>

namespace backspring {

namespace {

/// Both sides of a root, f of opposite signs there, as close as wanted; or the root twice.
std::pair<double, double> close_in(
    FunctionRef f, double a, double b, double fa, double fb, int bits) {
    if (fa == 0.0) return {a, a};
    if (fb == 0.0) return {b, b};
    if (a == b) return {a, a};
    if (a > b) return close_in(f, b, a, fb, fa, bits);
    // What is left at a root is rounding; called nothing, it spares shrinking the bracket to a
    // point.
    const double nothing = 1e-14 * std::max(std::abs(fa), std::abs(fb));
    const auto rounded = [&](double x) {
        const double value = f(x);
        return std::abs(value) < nothing ? 0.0 : value;
    };
    std::uintmax_t rounds = 100;
    const auto close_enough =
        boost::math::tools::eps_tolerance<double>(static_cast<unsigned>(bits));
    return boost::math::tools::toms748_solve(rounded, a, b, fa, fb, close_enough, rounds);
}

}  // namespace

double find_root(FunctionRef f, double a, double b, double fa, double fb, int bits) {
    const auto [low, high] = close_in(f, a, b, fa, fb, bits);
    return 0.5 * (low + high);
}

double find_crossing(FunctionRef f, double a, double b, double fa, double fb) {
    constexpr double rounding = 1e-9;
    constexpr int bits = 50;
    double least = std::min(std::abs(fa), std::abs(fb));
    const auto watched = [&](double x) {
        const double value = f(x);
        least = std::min(least, std::abs(value));
        return value;
    };
    const auto [low, high] = close_in(watched, a, b, fa, fb, bits);
    if (least <= rounding * (std::abs(fa) + std::abs(fb))) return 0.5 * (low + high);
    // A jump, closed in to its two neighbours.
    double before = a < b ? low : high, beyond = a < b ? high : low;
    for (;;) {
        const double middle = 0.5 * (before + beyond);
        if (middle == before || middle == beyond) return beyond;
        (f(middle) * fa > 0.0 ? before : beyond) = middle;
    }
}

double find_point(FunctionRef f, double place, double doubt) {
    // The branches' curvature leaves an error of order doubt^2.
    for (int round = 0; round < 4; ++round, doubt *= 0.03) {
        const double left = f(place - doubt), right = f(place + doubt);
        const double rise = left - f(place - 2.0 * doubt), fall = right - f(place + 2.0 * doubt);
        if (!(rise + fall > 0.0)) break;
        place += doubt * std::clamp((right - left + fall - rise) / (rise + fall), -1.0, 1.0);
    }
    return place;
}

double find_maximum(FunctionRef f, double a, double b, std::optional<int> fewer_bits) {
    // Parabolas close in on a smooth top in five to seven rounds, and on a point not at all.
    constexpr std::uintmax_t smooth = 7;
    constexpr double gain = 1e-9;
    const int bits = fewer_bits.value_or(18);
    std::uintmax_t rounds = 60;
    const auto negated = [&f](double x) { return -f(x); };
    const auto [place, lowest] = boost::math::tools::brent_find_minima(negated, a, b, bits, rounds);
    if (fewer_bits || rounds <= smooth) return place;
    const double doubt = std::ldexp(std::abs(place) + 0.25, 2 - bits);
    if (place - 2.0 * doubt < a || place + 2.0 * doubt > b) return place;
    const double point = find_point(f, place, doubt);
    return lowest - negated(point) > gain * std::abs(lowest) ? point : place;
}

}  // namespace backspring

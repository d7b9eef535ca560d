#pragma once

#include <cmath>
#include <utility>

namespace backspring::detail {

constexpr int kMostCurveSteps = 40;
// Of the way between both places: the square of a step so short is next to nothing.
constexpr double kLastCurveStep = 1e-5;
constexpr double kCloseOnCurve = 1e-13;

/// The top of a curve.
struct CurveTop {
    double x, value, curvature;
};

/// Where a curve is greatest between two places, near a place.
template <class Curve>
[[nodiscard]] CurveTop top_of(const Curve& curve, double low, double high, double near) {
    const double close = kCloseOnCurve * (high - low), last_step = kLastCurveStep * (high - low);
    CurveTop top{near, 0.0, 0.0};
    for (int step = 0; step < kMostCurveSteps && high - low > close; ++step) {
        const auto jet = curve.at(top.x);
        (jet.slope > 0.0 ? low : high) = top.x;
        const double newton = jet.curvature < 0.0 ? -jet.slope / jet.curvature : low - high - 1.0;
        const bool inside = top.x + newton > low && top.x + newton < high;
        const double way = inside ? newton : 0.5 * (low + high) - top.x;
        top = {top.x + way, jet.value + way * (jet.slope + 0.5 * way * jet.curvature),
               jet.curvature};
        if (std::abs(way) <= (inside ? last_step : close)) break;
    }
    return top;
}

/// Where it vanishes between two places at which it has opposite signs, near a place.
///
/// @param rises  from the first to the second
template <class Curve>
[[nodiscard]] double zero_of(const Curve& curve, double low, double high, double near, bool rises) {
    const double close = kCloseOnCurve * (high - low), last_step = kLastCurveStep * (high - low);
    double x = near;
    for (int step = 0; step < kMostCurveSteps && high - low > close; ++step) {
        const auto jet = curve.at(x);
        ((jet.value < 0.0) == rises ? low : high) = x;
        const double next = x - jet.value / jet.slope;
        const bool inside = next > low && next < high;
        const double last = std::exchange(x, inside ? next : 0.5 * (low + high));
        if (std::abs(x - last) <= (inside ? last_step : close)) break;
    }
    return x;
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

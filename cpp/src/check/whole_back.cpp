#include "backspring/check/whole_back.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "backspring/action/end_stop.hpp"
#include "backspring/core/root.hpp"

namespace backspring {
namespace {

// Between two touches a bent back has few summits; these find the part that holds the highest.
constexpr int kPartsAlong = 24;
// The back is flush at the middle pin whatever is ground: what is low shows from here on.
constexpr double kNearPin = 1e-3;

/// A station of the back and a value there.
struct BackPlace {
    double x_mm;
    double value;
};

/// Stations between which the back of two contacts is smooth: `from`, their touches, the end.
std::vector<double> smooth_stretches(const Joint& joint,
                                     const Contact& open,
                                     const Contact& position,
                                     double from_mm) {
    const double end = joint.pad.end_mm;
    std::vector<double> stations{from_mm, end};
    for (const Contact* contact : {&open, &position}) {
        for (const Touch& touch : contact->all()) {
            if (touch.x_mm > from_mm && touch.x_mm < end) stations.push_back(touch.x_mm);
        }
    }
    std::sort(stations.begin(), stations.end());
    return stations;
}

/// Where a value, smooth between stations, is greatest.
BackPlace greatest_along(FunctionRef value, const std::vector<double>& stations) {
    BackPlace best{stations.front(), value(stations.front())};
    const auto take = [&](double x, double found) {
        if (found > best.value) best = {x, found};
    };
    for (std::size_t i = 1; i < stations.size(); ++i) {
        const double from = stations[i - 1], part = (stations[i] - from) / kPartsAlong;
        if (!(part > 0.0)) continue;
        int highest = 0;
        double at_highest = value(from);
        for (int k = 1; k <= kPartsAlong; ++k) {
            const double there = value(from + k * part);
            if (!(there > at_highest)) continue;
            highest = k;
            at_highest = there;
        }
        take(from + highest * part, at_highest);
        const double top = find_maximum(value, from + std::max(highest - 1, 0) * part,
                                        from + std::min(highest + 1, kPartsAlong) * part);
        take(top, value(top));
    }
    return best;
}

double slope_at_dial(const Joint& joint, const Contact& contact) {
    return back_slope(joint, contact, joint.dial_mm);
}

BackAlong along_back(const Joint& joint, const Contact& open, const Contact& position) {
    const auto above = [&](double x) { return above_open_mm(joint, open, position, x); };
    const auto below = [&](double x) { return -above(x); };
    const std::vector<double> stations = smooth_stretches(joint, open, position, 0.0);
    const BackPlace low = greatest_along(below, stations), high = greatest_along(above, stations);
    return {.least_mm = low.value == 0.0 ? 0.0 : -low.value,
            .least_at_mm = low.x_mm,
            .greatest_mm = high.value,
            .greatest_at_mm = high.x_mm,
            .per_dial_mm = slope_at_dial(joint, position) - slope_at_dial(joint, open)};
}

}  // namespace

double above_open_mm(const Joint& joint,
                     const Contact& open,
                     const Contact& position,
                     double x_mm) {
    return back_mm(joint, position, x_mm) - back_mm(joint, open, x_mm);
}

double least_lift_n(const Joint& joint, const Contact& open, const Contact& position) {
    const auto low = [&](double x) {
        return -above_open_mm(joint, open, position, x) / back_per_force(joint, x, joint.pivot_mm);
    };
    const double from = kNearPin * joint.pad.end_mm;
    return -greatest_along(low, smooth_stretches(joint, open, position, from)).value;
}

std::optional<double> flush_station_mm(const Joint& joint,
                                       const Contact& open,
                                       const Contact& position) {
    const auto above = [&](double x) { return above_open_mm(joint, open, position, x); };
    const auto stations = smooth_stretches(joint, open, position, kNearPin * joint.pad.end_mm);
    std::optional<double> nearest;
    for (std::size_t i = 1; i < stations.size(); ++i) {
        const double from = stations[i - 1], to = stations[i];
        const double at_from = above(from), at_to = above(to);
        if (from == to || at_from * at_to > 0.0) continue;
        const double root = find_root(above, from, to, at_from, at_to);
        if (!nearest || std::abs(root - joint.dial_mm) < std::abs(*nearest - joint.dial_mm)) {
            nearest = root;
        }
    }
    return nearest;
}

WholeBack whole_back(const Joint& joint, const Rests& rests) {
    WholeBack back;
    if (rests.half_stop) back.half_stop = along_back(joint, rests.open, *rests.half_stop);
    if (rests.closed) back.closed = along_back(joint, rests.open, *rests.closed);
    return back;
}

WholeBack whole_back(Solution& solution) { return whole_back(solution.joint(), solution.rests()); }

WholeBack whole_back(const Design& design) {
    Solution solution(design);
    return whole_back(solution);
}

}  // namespace backspring

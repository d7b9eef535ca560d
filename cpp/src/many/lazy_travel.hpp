#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "backspring/action/rest.hpp"
#include "backspring/action/sweep.hpp"

namespace backspring {

/// The one-degree grid of a check from closed to open, each turn worked out only when asked for.
class LazyTravel {
  public:
    LazyTravel(const Action& action, double start_deg);

    [[nodiscard]] int count() const { return static_cast<int>(known_.size()); }
    [[nodiscard]] double angle_deg(int i) const;
    [[nodiscard]] const Turn& turn(int i);
    [[nodiscard]] const Action& action() const { return action_; }

  private:
    const Action& action_;
    double start_deg_;
    std::vector<Turn> turns_;
    std::vector<bool> known_;
};

/// The part of a travel between two rests, which are its first and last turn.
class LazyStroke {
  public:
    LazyStroke(LazyTravel& travel, const Contact& from, const Contact& to);

    [[nodiscard]] int count() const { return end_ - first_ + 2; }
    [[nodiscard]] const Turn& turn(int i);
    [[nodiscard]] const Action& action() const { return travel_.action(); }

  private:
    LazyTravel& travel_;
    Turn from_, to_;
    int first_, end_;  ///< of the grid's turns strictly between the rests
};

inline double angle_of(const Turn& turn) { return turn.contact.blade_angle_deg; }

/// How a contact bears: which edges of the pad take it, if any. Torque has its cusps where it
/// changes.
[[nodiscard]] int bearing_kind(const Contact& contact, const Pad& pad);

/// Place of the largest of `count` values, most of them never asked for.
///
/// Every fourth is tried. Then all are about each hill that comes within a tenth of the highest,
/// and where a narrower peak can hide: beside a rest, and near where the way of bearing
/// changes.
///
/// @param value  of a place
/// @param kind   way of bearing at a place
template <class Value, class Kind>
int find_top(int count, Value value, Kind kind) {
    constexpr int stride = 4;
    constexpr double near_top = 0.1, level = 1e-6;
    std::vector<int> places;
    for (int i = 0; i < count - 1; i += stride) places.push_back(i);
    places.push_back(count - 1);
    std::vector<double> values;
    for (const int i : places) values.push_back(value(i));
    const auto highest = std::max_element(values.begin(), values.end());
    int top = places[static_cast<std::size_t>(highest - values.begin())];
    double best = *highest;
    const double worth = best - near_top * std::abs(best);
    // On a round end all are alike to rounding: a bump at its end must not be taken for lower.
    const double alike = level * std::abs(best);
    const auto is_hill = [&](std::size_t k) {
        return values[k] >= worth && (k == 0 || values[k] >= values[k - 1] - alike) &&
               (k + 1 == values.size() || values[k] >= values[k + 1] - alike);
    };
    // An edge of the pad first takes the flat's end, then the corner: the cusp is between.
    const auto changes = [&](std::size_t k) {
        return k + 1 < places.size() && kind(places[k]) != kind(places[k + 1]);
    };
    for (std::size_t k = 0; k + 1 < places.size(); ++k) {
        const bool at_rest = k == 0 || k + 2 == places.size();
        const bool cusp = changes(k) || changes(k + 1) || (k > 0 && changes(k - 1));
        if (!at_rest && !cusp && !is_hill(k) && !is_hill(k + 1)) continue;
        for (int i = places[k] + 1; i < places[k + 1]; ++i) {
            const double v = value(i);
            if (v > best || (v == best && i < top)) top = i, best = v;
        }
    }
    return top;
}

}  // namespace backspring

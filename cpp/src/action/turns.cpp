#include "backspring/action/turns.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/root.hpp"

namespace backspring {
namespace {

constexpr double kOpenDeg = 180.0;
constexpr double kSlackDeg = 1e-9;
constexpr double kFirstLookDeg = 4.0;

/// Values at the places of a first look, rising.
struct FirstLook {
    std::vector<int> places;
    std::vector<double> values;
    int top = 0;
    double best = 0.0;
};

FirstLook look_first(Turns& turns, const TurnValue& value) {
    FirstLook look;
    for (int i = 0; i < turns.count() - 1; i += turns.stride()) look.places.push_back(i);
    look.places.push_back(turns.count() - 1);
    for (const int i : look.places) look.values.push_back(value(turns[i]));
    const auto highest = std::max_element(look.values.begin(), look.values.end());
    look.top = look.places[static_cast<std::size_t>(highest - look.values.begin())];
    look.best = *highest;
    return look;
}

/// Which places of a first look are hills that may hide the highest.
std::vector<bool> hills_of(const FirstLook& look) {
    constexpr double near_top = 0.1, level = 1e-6;
    const double worth = look.best - near_top * std::abs(look.best);
    // On a round end all are alike to rounding: a bump at its end must not be taken for lower.
    const double alike = level * std::abs(look.best);
    const std::vector<double>& values = look.values;
    std::vector<bool> hills;
    for (std::size_t k = 0; k < values.size(); ++k) {
        hills.push_back(values[k] >= worth && (k == 0 || values[k] >= values[k - 1] - alike) &&
                        (k + 1 == values.size() || values[k] >= values[k + 1] - alike));
    }
    return hills;
}

/// Whether the way of bearing changes between two places of a first look, or beside them: an edge
/// of the pad first takes the flat's end, then the corner, and the cusp is between.
bool cusp_near(Turns& turns, const std::vector<int>& places, std::size_t k) {
    const auto changes = [&](std::size_t j) {
        return j + 1 < places.size() &&
               turns.bearing_kind(places[j]) != turns.bearing_kind(places[j + 1]);
    };
    return changes(k) || changes(k + 1) || (k > 0 && changes(k - 1));
}

}  // namespace

Turns::Turns(TurnAt turn_at, const Pad& pad, double from_deg, double step_deg)
    : turn_at_(std::move(turn_at)),
      pad_(pad),
      stride_(std::max(static_cast<int>(std::lround(kFirstLookDeg / step_deg)), 1)) {
    const int whole = static_cast<int>(std::floor((kOpenDeg - from_deg) / step_deg + kSlackDeg));
    angles_deg_.reserve(static_cast<std::size_t>(whole) + 2);
    for (int i = 0; i <= whole; ++i) angles_deg_.push_back(from_deg + i * step_deg);
    if (kOpenDeg - angles_deg_.back() > kSlackDeg) angles_deg_.push_back(kOpenDeg);
    turns_.resize(angles_deg_.size());
    known_.resize(angles_deg_.size(), false);
}

Turns::Turns(TurnAt turn_at, std::vector<Turn> known)
    : turn_at_(std::move(turn_at)), turns_(std::move(known)), known_(turns_.size(), true) {
    for (const Turn& turn : turns_) angles_deg_.push_back(turn.contact.blade_angle_deg);
}

Turns::Turns(Turns& whole, const Turn& from, const Turn& to)
    : turn_at_(whole.turn_at_), pad_(whole.pad_), stride_(whole.stride_), whole_(&whole) {
    const double from_deg = from.contact.blade_angle_deg, to_deg = to.contact.blade_angle_deg;
    const auto& all = whole.angles_deg_;
    const auto begin = std::upper_bound(all.begin(), all.end(), from_deg);
    const auto end = std::lower_bound(begin, all.end(), to_deg);
    first_ = static_cast<int>(begin - all.begin());
    angles_deg_.reserve(static_cast<std::size_t>(end - begin) + 2);
    angles_deg_.push_back(from_deg);
    angles_deg_.insert(angles_deg_.end(), begin, end);
    angles_deg_.push_back(to_deg);
    turns_.resize(angles_deg_.size());
    known_.resize(angles_deg_.size(), false);
    turns_.front() = from;
    turns_.back() = to;
    known_.front() = known_.back() = true;
}

const Turn& Turns::operator[](int i) {
    const auto at = static_cast<std::size_t>(i);
    if (!known_[at]) {
        turns_[at] = whole_ ? (*whole_)[first_ + i - 1] : turn_at_(angles_deg_[at]);
        known_[at] = true;
    }
    return turns_[at];
}

int Turns::bearing_kind(int i) {
    const Contact& contact = (*this)[i].contact;
    int kind = contact.count;
    for (const Touch& touch : contact.all()) {
        const bool at_edge = touch.x_mm == pad_.start_mm || touch.x_mm == pad_.end_mm;
        kind = 2 * kind + (at_edge ? 1 : 0);
    }
    return kind;
}

int top_of(Turns& turns, const TurnValue& value) {
    FirstLook look = look_first(turns, value);
    if (turns.stride() == 1) return look.top;
    const std::vector<bool> hills = hills_of(look);
    const std::vector<int>& places = look.places;
    for (std::size_t k = 0; k + 1 < places.size(); ++k) {
        const bool at_rest = k == 0 || k + 2 == places.size();
        if (!at_rest && !hills[k] && !hills[k + 1] && !cusp_near(turns, places, k)) continue;
        for (int i = places[k] + 1; i < places[k + 1]; ++i) {
            const double v = value(turns[i]);
            if (v > look.best || (v == look.best && i < look.top)) look.top = i, look.best = v;
        }
    }
    return look.top;
}

Turn refined(Turns& turns, int i, const TurnValue& value) {
    const double low = turns.angle_deg(std::max(i - 1, 0));
    const double high = turns.angle_deg(std::min(i + 1, turns.count() - 1));
    const auto at = [&](double angle) { return value(turns.at(angle)); };
    const Turn best = turns.at(find_maximum(at, low, high));
    return value(best) > value(turns[i]) ? best : turns[i];
}

Turn largest(Turns& turns, const TurnValue& value) {
    return refined(turns, top_of(turns, value), value);
}

}  // namespace backspring

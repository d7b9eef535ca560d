#include "backspring/action/stroke.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/angle.hpp"
#include "backspring/core/root.hpp"

namespace backspring {
namespace {

// Torque below this share of the stroke's largest is none: on an end turned about the pivot it is
// only rounding.
constexpr double kNoTorque = 1e-9;

template <class Value>
std::size_t largest(const std::vector<Turn>& way, Value value) {
    const auto less = [&](const Turn& a, const Turn& b) { return value(a) < value(b); };
    return static_cast<std::size_t>(std::max_element(way.begin(), way.end(), less) - way.begin());
}

double angle_of(const Turn& turn) { return turn.contact.blade_angle_deg; }

/// The largest value near a turn, between its neighbours.
template <class Value>
Turn refined(const TurnAt& turn_at, const std::vector<Turn>& way, std::size_t i, Value value) {
    const double low = angle_of(way[i == 0 ? 0 : i - 1]);
    const double high = angle_of(way[std::min(i + 1, way.size() - 1)]);
    const auto at = [&](double angle) { return value(turn_at(angle)); };
    const Turn best = turn_at(find_maximum(at, low, high));
    return value(best) > value(way[i]) ? best : way[i];
}

/// Angle after turn i where a falling value first drops below -small; nothing if it never does.
template <class Value>
std::optional<double> falls_below(
    const TurnAt& turn_at, const std::vector<Turn>& way, std::size_t i, double small, Value value) {
    for (std::size_t j = i + 1; j < way.size(); ++j) {
        const double last = value(way[j - 1]) + small, next = value(way[j]) + small;
        if (next >= 0.0) continue;
        const auto at = [&](double angle) { return value(turn_at(angle)) + small; };
        return last <= 0.0 ? angle_of(way[j - 1])
                           : find_crossing(at, angle_of(way[j - 1]), angle_of(way[j]), last, next);
    }
    return std::nullopt;
}

/// Work of friction from an angle to the end of the way.
double friction_work_mj(const TurnAt& turn_at, const std::vector<Turn>& way, double from_deg) {
    double work = 0.0;
    Turn last = turn_at(from_deg);
    for (const Turn& turn : way) {
        if (angle_of(turn) <= from_deg) continue;
        work += 0.5 * (last.friction_nmm + turn.friction_nmm) *
                radians(angle_of(turn) - angle_of(last));
        last = turn;
    }
    return work;
}

}  // namespace

std::optional<Stroke> make_stroke(const TurnAt& turn_at, const std::vector<Turn>& way) {
    const Contact &from = way.front().contact, &to = way.back().contact;
    const auto opening = [](const Turn& t) { return t.opening_nmm(); };
    const auto closing = [](const Turn& t) { return -t.closing_nmm(); };
    const auto torque = [](const Turn& t) { return t.contact.torque_nmm; };
    const auto energy = [](const Turn& t) { return t.contact.energy_nmm; };

    const Turn peak = refined(turn_at, way, largest(way, opening), opening);
    const Turn closing_peak = refined(turn_at, way, largest(way, closing), closing);
    const double small = kNoTorque * std::max(opening(peak), closing(closing_peak));
    const std::size_t top = largest(way, energy);
    // One step back: the crest itself may lie just before the highest turn.
    const auto crest = falls_below(turn_at, way, top == 0 ? 0 : top - 1, small, torque);
    if (!crest) return std::nullopt;
    const double crest_energy = turn_at(*crest).contact.energy_nmm;
    const auto runaway = falls_below(turn_at, way, top == 0 ? 0 : top - 1, small, opening);

    Stroke stroke;
    stroke.from_deg = from.blade_angle_deg;
    stroke.to_deg = to.blade_angle_deg;
    stroke.start_torque_nmm = opening(way.front());
    stroke.peak_torque_nmm = opening(peak);
    stroke.peak_torque_angle_deg = angle_of(peak);
    stroke.crest_angle_deg = *crest;
    stroke.energy_up_mj = crest_energy - from.energy_nmm;
    stroke.energy_released_mj = crest_energy - to.energy_nmm;
    if (runaway) {
        const double released = turn_at(*runaway).contact.energy_nmm - to.energy_nmm;
        stroke.snap_energy_mj = std::max(released - friction_work_mj(turn_at, way, *runaway), 0.0);
    }
    stroke.closing_peak_torque_nmm = closing(closing_peak);
    stroke.closing_peak_angle_deg = angle_of(closing_peak);
    stroke.closing_start_torque_nmm = closing(way.back());
    return stroke;
}

std::optional<Stroke> make_stroke(const Action& action,
                                  const std::vector<Step>& steps,
                                  const Contact& from,
                                  const Contact& to) {
    const TurnAt at = [&](double angle) { return turn_at(action, angle); };
    std::vector<Turn> way{at(from.blade_angle_deg)};
    way.reserve(steps.size() + 2);
    for (const Step& step : steps) {
        const double angle = angle_of(step.turn);
        if (angle > from.blade_angle_deg && angle < to.blade_angle_deg) way.push_back(step.turn);
    }
    way.push_back(at(to.blade_angle_deg));
    return make_stroke(at, way);
}

}  // namespace backspring

#include "quick_strokes.hpp"

#include "backspring/core/angle.hpp"
#include "backspring/core/root.hpp"

namespace backspring {
namespace {

// As in make_stroke(): below this share of the largest, torque is rounding.
constexpr double kNoTorque = 1e-9;

double opening(const Turn& turn) { return turn.opening_nmm(); }
double torque(const Turn& turn) { return turn.contact.torque_nmm; }

template <class Way, class Value>
int top_of(Way& way, Value value) {
    return find_top(
        way.count(), [&](int i) { return value(way.turn(i)); },
        [&](int i) { return bearing_kind(way.turn(i).contact, way.action().joint.pad); });
}

double refined_peak(LazyStroke& way) {
    const int top = top_of(way, opening);
    const double low = angle_of(way.turn(std::max(top - 1, 0)));
    const double high = angle_of(way.turn(std::min(top + 1, way.count() - 1)));
    const auto at = [&](double angle) { return opening(turn_at(way.action(), angle)); };
    return std::max(at(find_maximum(at, low, high)), opening(way.turn(top)));
}

/// Angle after turn i where a falling value first drops below -small; none if it never does.
template <class Value>
std::optional<double> falls_below(LazyStroke& way, int i, double small, Value value) {
    for (int j = i + 1; j < way.count(); ++j) {
        const double last = value(way.turn(j - 1)) + small, next = value(way.turn(j)) + small;
        if (next >= 0.0) continue;
        const auto at = [&](double a) { return value(turn_at(way.action(), a)) + small; };
        const double from = angle_of(way.turn(j - 1)), to = angle_of(way.turn(j));
        return last <= 0.0 ? from : find_root(at, from, to, last, next);
    }
    return std::nullopt;
}

double friction_work_mj(LazyStroke& way, double from_deg) {
    double work = 0.0;
    Turn last = turn_at(way.action(), from_deg);
    int first = way.count();
    while (first > 0 && angle_of(way.turn(first - 1)) > from_deg) --first;
    for (int i = first; i < way.count(); ++i) {
        const Turn& turn = way.turn(i);
        work += 0.5 * (last.friction_nmm + turn.friction_nmm) *
                radians(angle_of(turn) - angle_of(last));
        last = turn;
    }
    return work;
}

double snap_mj(LazyStroke& way, int from, double small) {
    const auto runaway = falls_below(way, from, small, opening);
    if (!runaway) return 0.0;
    const double up = contact_at(way.action().joint, *runaway).energy_nmm;
    const double released = up - way.turn(way.count() - 1).contact.energy_nmm;
    return std::max(released - friction_work_mj(way, *runaway), 0.0);
}

}  // namespace

QuickStroke quick_stroke(LazyStroke& way, bool with_snap) {
    QuickStroke stroke{.peak_torque_nmm = refined_peak(way), .crest_deg = {}, .snap_energy_mj = 0};
    const double small = kNoTorque * std::max(stroke.peak_torque_nmm, 0.0);
    const int top = top_of(way, [](const Turn& t) { return t.contact.energy_nmm; });
    const int from = std::max(top - 1, 0);
    stroke.crest_deg = falls_below(way, from, small, torque);
    if (stroke.crest_deg && with_snap) stroke.snap_energy_mj = snap_mj(way, from, small);
    return stroke;
}

QuickStress quick_stress(LazyTravel& travel) {
    const Action& action = travel.action();
    const auto stress = [&](const Contact& c) { return peak_stress(action, c).stress_mpa; };
    const int top = top_of(travel, [&](const Turn& t) { return stress(t.contact); });
    const double low = travel.angle_deg(std::max(top - 1, 0));
    const double high = travel.angle_deg(std::min(top + 1, travel.count() - 1));
    const auto at = [&](double angle) { return stress(contact_at(action.joint, angle)); };
    const Contact best = contact_at(action.joint, find_maximum(at, low, high));
    const Contact& grid = travel.turn(top).contact;
    const Contact& contact = stress(best) > stress(grid) ? best : grid;
    return {.peak = peak_stress(action, contact), .angle_deg = contact.blade_angle_deg};
}

}  // namespace backspring

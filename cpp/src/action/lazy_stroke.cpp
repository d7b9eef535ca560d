#include "backspring/action/lazy_stroke.hpp"

#include <algorithm>

#include "backspring/core/angle.hpp"
#include "backspring/core/root.hpp"

namespace backspring {
namespace {

// Torque below this share of the way's largest is none: on an end turned about the pivot it is
// only rounding.
constexpr double kNoTorque = 1e-9;

double opening_nmm(const Turn& turn) { return turn.opening_nmm(); }
double closing_nmm(const Turn& turn) { return -turn.closing_nmm(); }
double torque_nmm(const Turn& turn) { return turn.contact.torque_nmm; }
double energy_mj(const Turn& turn) { return turn.contact.energy_nmm; }

}  // namespace

const Turn& LazyStroke::opening_peak() {
    if (!opening_peak_) opening_peak_ = largest(turns_, opening_nmm);
    return *opening_peak_;
}

int LazyStroke::closing_top() {
    if (!closing_top_) closing_top_ = top_of(turns_, closing_nmm);
    return *closing_top_;
}

const Turn& LazyStroke::closing_peak() {
    if (!closing_peak_) closing_peak_ = refined(turns_, closing_top(), closing_nmm);
    return *closing_peak_;
}

double LazyStroke::no_torque_nmm() {
    return kNoTorque * std::max(opening_nmm(opening_peak()), closing_nmm(turns_[closing_top()]));
}

/// First turn after the highest where a falling value is below nothing; count() if none is.
int LazyStroke::falls_below(const TurnValue& value) {
    if (!energy_top_) energy_top_ = top_of(turns_, energy_mj);
    // One step back: the crest itself may lie just before the highest turn.
    int i = std::max(*energy_top_ - 1, 0) + 1;
    while (i < turns_.count() && value(turns_[i]) + no_torque_nmm() >= 0.0) ++i;
    return i;
}

/// Angle before a turn found by falls_below() where the value passes below nothing.
std::optional<double> LazyStroke::angle_of_fall(int turn, const TurnValue& value) {
    if (turn == turns_.count()) return std::nullopt;
    const double small = no_torque_nmm();
    const double last = value(turns_[turn - 1]) + small, next = value(turns_[turn]) + small;
    const double from = turns_.angle_deg(turn - 1), to = turns_.angle_deg(turn);
    const auto at = [&](double angle) { return value(turns_.at(angle)) + small; };
    return last <= 0.0 ? from : find_crossing(at, from, to, last, next);
}

bool LazyStroke::has_crest() {
    if (!crest_turn_) crest_turn_ = falls_below(torque_nmm);
    return *crest_turn_ < turns_.count();
}

std::optional<double> LazyStroke::crest_angle_deg() {
    return has_crest() ? angle_of_fall(*crest_turn_, torque_nmm) : std::nullopt;
}

double LazyStroke::friction_work_mj(double from_deg) {
    int first = turns_.count();
    while (first > 0 && turns_.angle_deg(first - 1) > from_deg) --first;
    double work = 0.0;
    Turn last = turns_.at(from_deg);
    for (int i = first; i < turns_.count(); ++i) {
        const Turn& turn = turns_[i];
        const double turned = turn.contact.blade_angle_deg - last.contact.blade_angle_deg;
        work += 0.5 * (last.friction_nmm + turn.friction_nmm) * radians(turned);
        last = turn;
    }
    return work;
}

double LazyStroke::snap_energy_mj() {
    const auto runaway = angle_of_fall(falls_below(opening_nmm), opening_nmm);
    if (!runaway || !has_crest()) return 0.0;
    const double released = energy_mj(turns_.at(*runaway)) - energy_mj(to());
    return std::max(released - friction_work_mj(*runaway), 0.0);
}

}  // namespace backspring

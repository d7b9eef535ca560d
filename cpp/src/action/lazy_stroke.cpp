#include "backspring/action/lazy_stroke.hpp"

#include <algorithm>

#include "hills.hpp"
#include "indenters.hpp"

namespace backspring {
namespace {

constexpr auto opening_nmm = [](const Turn& turn) { return turn.opening_nmm(); };
constexpr auto closing_nmm = [](const Turn& turn) { return -turn.closing_nmm(); };
constexpr auto torque_nmm = [](const Turn& turn) { return turn.contact.torque_nmm; };
constexpr auto friction_nmm = [](const Turn& turn) { return turn.friction_nmm; };
double energy_mj(const Turn* turn) { return turn->contact.energy_nmm; }

}  // namespace

Peak LazyStroke::peak_of(const TurnValue& value) const {
    return detail::peak_of(*action_, pieces_, values_of(pieces_, value), value);
}

const Peak& LazyStroke::opening_peak() {
    if (!opening_peak_) opening_peak_ = peak_of(opening_nmm);
    return *opening_peak_;
}

const Peak& LazyStroke::closing_peak() {
    if (!closing_peak_) closing_peak_ = peak_of(closing_nmm);
    return *closing_peak_;
}

/// Where a value that falls first passes below nothing, about or after the highest turn.
std::optional<Passing> LazyStroke::fall(const TurnValue& value) const {
    double highest = energy_mj(&from()), from_deg = angle_of(&from());
    double last_deg = from_deg;
    for (const Piece& piece : pieces_) {
        for (const Turn* turn : piece) {
            // One turn back: the crest itself may lie just before the highest.
            if (energy_mj(turn) > highest) highest = energy_mj(turn), from_deg = last_deg;
            last_deg = angle_of(turn);
        }
    }
    // On an end turned about the pivot what is left of the torque is the rounding of its lever.
    const double lever_mm = kRoundingOfLength * action_->joint.pivot_mm;
    const auto lifted = [&](const Turn& turn) {
        return value(turn) + lever_mm * turn.contact.force_n;
    };
    for (const Piece& piece : pieces_) {
        for (std::size_t i = 0; i < piece.size(); ++i) {
            if (angle_of(piece[i]) <= from_deg || lifted(*piece[i]) >= 0.0) continue;
            if (i == 0) return passing(*piece[i]);
            if (lifted(*piece[i - 1]) <= 0.0) return passing(*piece[i - 1]);
            return passes_between(*action_, piece, i - 1, lifted);
        }
    }
    return std::nullopt;
}

const std::optional<Passing>& LazyStroke::crest() {
    if (!crest_) crest_ = fall(torque_nmm);
    return *crest_;
}

double LazyStroke::friction_work_mj(double from_deg, double to_deg) {
    if (!friction_work_) friction_work_.emplace(pieces_, friction_nmm);
    return friction_work_->between(from_deg, to_deg);
}

double LazyStroke::snap_energy_mj() {
    if (!has_crest()) return 0.0;
    const auto runaway = fall(opening_nmm);
    if (!runaway) return 0.0;
    const double released = runaway->energy_nmm - energy_mj(&to());
    return std::max(released - friction_work_mj(runaway->blade_angle_deg, angle_of(&to())), 0.0);
}

/// Where the closing torque outdoes friction, going back from the crest.
std::optional<Passing> LazyStroke::takes_over(const Passing& crest) const {
    const Friction& friction = action_->friction;
    if (friction.spring == 0.0 && friction.pivot * friction.pivot_pin_mm == 0.0) return crest;
    for (std::size_t p = pieces_.size(); p-- > 0;) {
        const Piece& piece = pieces_[p];
        for (std::size_t i = piece.size(); i-- > 0;) {
            if (angle_of(piece[i]) >= crest.blade_angle_deg || closing_nmm(*piece[i]) > 0.0)
                continue;
            if (i + 1 == piece.size()) return passing(*piece[i]);
            return passes_between(*action_, piece, i, closing_nmm);
        }
    }
    return std::nullopt;
}

double LazyStroke::closing_energy_mj() {
    if (!has_crest()) return 0.0;
    const auto start = takes_over(*crest());
    if (!start || start->blade_angle_deg <= angle_of(&from())) return 0.0;
    const double released = start->energy_nmm - energy_mj(&from());
    return std::max(released - friction_work_mj(angle_of(&from()), start->blade_angle_deg), 0.0);
}

}  // namespace backspring

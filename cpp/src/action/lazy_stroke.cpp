#include "backspring/action/lazy_stroke.hpp"

#include <algorithm>

#include "indenters.hpp"

namespace backspring {
namespace {

constexpr auto opening_nmm = [](const Turn& turn) { return turn.opening_nmm(); };
constexpr auto closing_nmm = [](const Turn& turn) { return -turn.closing_nmm(); };
constexpr auto torque_nmm = [](const Turn& turn) { return turn.contact.torque_nmm; };
constexpr auto friction_nmm = [](const Turn& turn) { return turn.friction_nmm; };
double energy_mj(const Turn* turn) { return turn->contact.energy_nmm; }

}  // namespace

const Turn& LazyStroke::opening_peak() {
    if (!opening_peak_) opening_peak_ = peak_of(opening_nmm);
    return *opening_peak_;
}

const Turn& LazyStroke::closing_peak() {
    if (!closing_peak_) closing_peak_ = peak_of(closing_nmm);
    return *closing_peak_;
}

/// Where a value that falls first passes below nothing, about or after the highest turn.
std::optional<Turn> LazyStroke::fall(const TurnValue& value) const {
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
            if (i == 0) return *piece[i];
            if (lifted(*piece[i - 1]) <= 0.0) return *piece[i - 1];
            return zero_between(*action_, piece, i - 1, lifted);
        }
    }
    return std::nullopt;
}

const std::optional<Turn>& LazyStroke::crest() {
    if (!crest_) crest_ = fall(torque_nmm);
    return *crest_;
}

double LazyStroke::friction_work_mj(const Turn& from, const Turn& to) {
    if (!friction_work_) friction_work_.emplace(pieces_, friction_nmm);
    return friction_work_->between(angle_of(&from), angle_of(&to));
}

double LazyStroke::snap_energy_mj() {
    if (!has_crest()) return 0.0;
    const auto runaway = fall(opening_nmm);
    if (!runaway) return 0.0;
    const double released = energy_mj(&*runaway) - energy_mj(&to());
    return std::max(released - friction_work_mj(*runaway, to()), 0.0);
}

/// Where the closing torque outdoes friction, going back from the crest.
std::optional<Turn> LazyStroke::takes_over(const Turn& crest) const {
    if (closing_nmm(crest) <= 0.0) return crest;
    for (std::size_t p = pieces_.size(); p-- > 0;) {
        const Piece& piece = pieces_[p];
        for (std::size_t i = piece.size(); i-- > 0;) {
            if (angle_of(piece[i]) >= angle_of(&crest) || closing_nmm(*piece[i]) > 0.0) continue;
            if (i + 1 == piece.size()) return *piece[i];
            return zero_between(*action_, piece, i, closing_nmm);
        }
    }
    return std::nullopt;
}

double LazyStroke::closing_energy_mj() {
    if (!has_crest()) return 0.0;
    const auto start = takes_over(*crest());
    if (!start || angle_of(&*start) <= angle_of(&from())) return 0.0;
    const double released = energy_mj(&*start) - energy_mj(&from());
    return std::max(released - friction_work_mj(from(), *start), 0.0);
}

}  // namespace backspring

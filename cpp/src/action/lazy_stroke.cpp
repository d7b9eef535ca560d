#include "backspring/action/lazy_stroke.hpp"

#include <algorithm>

namespace backspring {
namespace {

// Torque below this share of the way's largest is none: on an end turned about the pivot it is
// only rounding.
constexpr double kNoTorque = 1e-9;

double opening_nmm(const Turn& turn) { return turn.opening_nmm(); }
double closing_nmm(const Turn& turn) { return -turn.closing_nmm(); }
double torque_nmm(const Turn& turn) { return turn.contact.torque_nmm; }
double friction_nmm(const Turn& turn) { return turn.friction_nmm; }
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

double LazyStroke::no_torque_nmm() {
    double most = opening_nmm(opening_peak());
    for (const Piece& piece : pieces_) {
        for (const Turn* turn : piece) most = std::max(most, closing_nmm(*turn));
    }
    return kNoTorque * most;
}

/// Where a value that falls first passes below nothing, about or after the highest turn [deg].
std::optional<double> LazyStroke::fall_deg(const TurnValue& value) {
    double highest = energy_mj(&from()), from_deg = angle_of(&from());
    double last_deg = from_deg;
    for (const Piece& piece : pieces_) {
        for (const Turn* turn : piece) {
            // One turn back: the crest itself may lie just before the highest.
            if (energy_mj(turn) > highest) highest = energy_mj(turn), from_deg = last_deg;
            last_deg = angle_of(turn);
        }
    }
    const double small = no_torque_nmm();
    const TurnValue lifted = [&](const Turn& turn) { return value(turn) + small; };
    for (const Piece& piece : pieces_) {
        for (std::size_t i = 0; i < piece.size(); ++i) {
            if (angle_of(piece[i]) <= from_deg || lifted(*piece[i]) >= 0.0) continue;
            if (i == 0) return angle_of(piece[i]);
            if (lifted(*piece[i - 1]) <= 0.0) return angle_of(piece[i - 1]);
            return zero_between(*action_, piece, i - 1, lifted);
        }
    }
    return std::nullopt;
}

std::optional<double> LazyStroke::crest_angle_deg() {
    if (!crest_deg_) crest_deg_ = fall_deg(torque_nmm);
    return *crest_deg_;
}

double LazyStroke::friction_work_mj(double from_deg, double to_deg) const {
    return integral(pieces_, from_deg, to_deg, friction_nmm);
}

double LazyStroke::snap_energy_mj() {
    if (!has_crest()) return 0.0;
    const auto runaway = fall_deg(opening_nmm);
    if (!runaway) return 0.0;
    const double released = at(*runaway).contact.energy_nmm - energy_mj(&to());
    return std::max(released - friction_work_mj(*runaway, angle_of(&to())), 0.0);
}

double LazyStroke::closing_energy_mj() {
    const auto crest = crest_angle_deg();
    if (!crest) return 0.0;
    const auto takes_over = [&]() -> std::optional<double> {
        if (closing_nmm(at(*crest)) <= 0.0) return crest;
        for (std::size_t p = pieces_.size(); p-- > 0;) {
            const Piece& piece = pieces_[p];
            for (std::size_t i = piece.size(); i-- > 0;) {
                if (angle_of(piece[i]) >= *crest || closing_nmm(*piece[i]) > 0.0) continue;
                if (i + 1 == piece.size()) return angle_of(piece[i]);
                return zero_between(*action_, piece, i, closing_nmm);
            }
        }
        return std::nullopt;
    }();
    if (!takes_over || *takes_over <= angle_of(&from())) return 0.0;
    const double released = at(*takes_over).contact.energy_nmm - energy_mj(&from());
    return std::max(released - friction_work_mj(angle_of(&from()), *takes_over), 0.0);
}

}  // namespace backspring

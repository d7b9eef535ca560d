#include <algorithm>
#include <cmath>
#include <cstddef>

#include "backspring/action/turns.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/core/interpolant.hpp"
#include "backspring/core/root.hpp"
#include "window.hpp"

namespace backspring {
namespace {

constexpr double kThereDeg = 1e-7;
// Of a gap: an angle so near to its end is that.
constexpr double kSameAngle = 1e-9;

}  // namespace

Turn zero_between(const Action& action, const Piece& piece, std::size_t i, const TurnValue& value) {
    Interpolant curve;
    const Window near = about(piece, i, 2, 3);
    for (std::size_t k = near.first; k <= near.last; ++k) {
        curve.add(angle_of(piece[k]), value(*piece[k]));
    }
    double low = angle_of(piece[i]), high = angle_of(piece[i + 1]);
    double at_low = value(*piece[i]), at_high = value(*piece[i + 1]);
    if (at_low == 0.0) return *piece[i];
    PlaceCurve way = way_about(action, piece, near);
    const double same = kSameAngle * (high - low);
    double angle = curve.zero(low, high, 0.5 * (low + high));
    while (!curve.full() && angle - low > same && high - angle > same) {
        const Turn turn = turn_near(action, angle, way);
        const double here = value(turn);
        if (here == 0.0) return turn;
        way.add(turn.contact);
        curve.add(angle, here);
        const bool as_low = (here < 0.0) == (at_low < 0.0);
        (as_low ? low : high) = angle;
        (as_low ? at_low : at_high) = here;
        const double next = curve.zero(low, high, angle);
        if (std::abs(next - angle) <= kThereDeg) return turn_near(action, next, way);
        angle = next;
    }
    const auto at = [&](double x) { return value(turn_near(action, x, way)); };
    return turn_near(action, find_crossing(at, low, high, at_low, at_high), way);
}

TurnIntegral::TurnIntegral(std::span<const Piece> pieces, const TurnValue& value)
    : pieces_(pieces) {
    double sum = 0.0;
    for (const Piece& piece : pieces) {
        const std::size_t first = values_.size();
        for (const Turn* turn : piece) values_.push_back(value(*turn));
        for (std::size_t i = 0; i < piece.size(); ++i) {
            if (i > 0) sum += over(piece, first, i - 1, angle_of(piece[i - 1]), angle_of(piece[i]));
            upto_.push_back(sum);
        }
    }
}

/// Over a part of the gap behind a turn.
double TurnIntegral::over(
    const Piece& piece, std::size_t first, std::size_t i, double from_deg, double to_deg) const {
    Interpolant curve;
    const Window near = about(piece, i, 2, 3);
    for (std::size_t k = near.first; k <= near.last; ++k) {
        curve.add(radians(angle_of(piece[k])), values_[first + k]);
    }
    return curve.integral(radians(from_deg), radians(to_deg));
}

double TurnIntegral::upto(double angle_deg) const {
    std::size_t first = 0;
    for (const Piece& piece : pieces_) {
        if (angle_deg > angle_of(piece.back())) {
            first += piece.size();
            continue;
        }
        std::size_t i = piece.size() - 1;
        while (i > 0 && angle_of(piece[i]) > angle_deg) --i;
        const double node_deg = angle_of(piece[i]);
        if (angle_deg <= node_deg) return upto_[first + i];
        return upto_[first + i] + over(piece, first, i, node_deg, angle_deg);
    }
    return upto_.back();
}

}  // namespace backspring

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <cstddef>

#include "backspring/action/turns.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/core/root.hpp"
#include "chebyshev.hpp"
#include "curve_search.hpp"
#include "piece_curve.hpp"
#include "window.hpp"

namespace backspring {
namespace {

// A step so short leaves of an angle, and of what goes with it, less than 1e-11.
constexpr double kThereDeg = 1e-9;
// Of a gap: an angle so near to its end is that.
constexpr double kSameAngle = 1e-9;

std::vector<Contact> contacts_at(const Joint& joint, const std::vector<double>& angles_deg) {
    std::vector<Contact> contacts;
    for (const double angle : angles_deg) contacts.push_back(contact_at(joint, angle));
    return contacts;
}

}  // namespace

Turns::Turns(const Action& action, const std::vector<double>& marks_deg)
    : Turns(action, contacts_at(action.joint, marks_deg)) {}

std::span<const Piece> Turns::pieces(double from_deg, double to_deg) const {
    const auto first = std::ranges::find_if(
        pieces_, [&](const Piece& piece) { return angle_of(piece.front()) >= from_deg; });
    // A way ends at its mark also where a cut lies so near to it that the mark is a piece by
    // itself.
    const auto end = std::find_if(first, pieces_.end(), [&](const Piece& piece) {
        const double angle = angle_of(piece.front());
        return angle > to_deg || (angle == to_deg && piece.size() > 1);
    });
    return {first, end};
}

Turn zero_between(const Action& action, const Piece& piece, std::size_t i, const TurnValue& value) {
    constexpr int most_steps = 6;
    AtPlaces values{};
    for (std::size_t k = 0; k < piece.size(); ++k) values[k] = value(*piece[k]);
    double at_low = values[i], at_high = values[i + 1];
    if (at_low == 0.0) return *piece[i];
    const bool rises = at_low < 0.0;
    const PieceCurve curve(piece, {values.data(), piece.size()});
    const PlaceCurve way = way_about(action, piece, i);
    double low = angle_of(piece[i]), high = angle_of(piece[i + 1]);
    const double same = kSameAngle * (high - low), first = low + same, last = high - same;
    const double near = std::lerp(low, high, at_low / (at_low - at_high));
    double angle = zero_of(curve, low, high, near, rises);
    const auto inside = [&] {
        return angle > std::max(low, first) && angle < std::min(high, last);
    };
    for (int step = 0; step < most_steps && inside(); ++step) {
        Turn turn = turn_near(action, angle, way);
        const double here = value(turn), left = -here / curve.at(angle).slope;
        if (here == 0.0 || std::abs(left) <= kThereDeg) return turn;
        ((here < 0.0) == rises ? low : high) = angle;
        ((here < 0.0) == rises ? at_low : at_high) = here;
        angle += left;
    }
    const auto at = [&](double x) { return value(turn_near(action, x, way)); };
    return turn_near(action, find_crossing(at, low, high, at_low, at_high), way);
}

TurnIntegral::TurnIntegral(std::span<const Piece> pieces, const TurnValue& value)
    : pieces_(pieces) {
    std::size_t count = 0;
    for (const Piece& piece : pieces) count += piece.size();
    values_.reserve(count);
    upto_.reserve(count);
    double sum = 0.0;
    for (const Piece& piece : pieces) {
        const std::size_t first = values_.size();
        for (const Turn* turn : piece) values_.push_back(value(*turn));
        upto_.push_back(sum);
        if (piece.size() == 1) continue;
        const AtPlaces parts = integrals_between(std::span(values_).subspan(first));
        const double length = radians(angle_of(piece.back()) - angle_of(piece.front()));
        for (std::size_t i = 1; i < piece.size(); ++i) {
            sum += length * parts[i - 1];
            upto_.push_back(sum);
        }
    }
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
        const PieceCurve curve(piece, std::span(values_).subspan(first, piece.size()));
        const auto at = [&](double angle) { return curve.value_at(angle); };
        using Rule = boost::math::quadrature::gauss<double, 7>;
        return upto_[first + i] + radians(Rule::integrate(at, node_deg, angle_deg));
    }
    return upto_.back();
}

}  // namespace backspring

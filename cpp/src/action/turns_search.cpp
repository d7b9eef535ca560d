#include <algorithm>
#include <cmath>
#include <optional>

#include "backspring/action/turns.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/core/interpolant.hpp"
#include "backspring/core/root.hpp"

namespace backspring {
namespace {

// Of a value: less is rounding.
constexpr double kSameHeight = 1e-13;
// A hill whose top comes so near to the highest is climbed.
constexpr double kWorthALook = 0.03;
// A value that differs by less from what the curve told is told well.
constexpr double kTold = 1e-5;
// What a step so short leaves of a smooth top is rounding.
constexpr double kShortDeg = 1e-4;
constexpr double kThereDeg = 1e-7;
constexpr double kSameShare = 1e-9;

/// Places of a piece about a gap or a place of it, as many as tell a smooth curve.
struct Window {
    std::size_t first, last;
};

Window about(const Piece& piece, std::size_t i, std::size_t behind, std::size_t ahead) {
    return {i > behind ? i - behind : 0, std::min(i + ahead, piece.size() - 1)};
}

/// A place of a curve.
struct Point {
    double angle_deg, value;
};

/// A piece's turn that its neighbours do not pass, and how its curve goes there.
struct Hill {
    const Turn* node;
    std::vector<Point> points;  ///< about it
    double low_deg, high_deg, top_deg;
    double value, guess;
    bool at_end = false;  ///< of the piece, from where the curve falls
};

Interpolant curve_through(std::span<const Point> points) {
    Interpolant curve;
    for (const Point& point : points) curve.add(point.angle_deg, point.value);
    return curve;
}

Hill make_hill(const Piece& piece, std::size_t i, const std::vector<double>& values) {
    Hill hill{.node = piece[i],
              .points = {},
              .low_deg = angle_of(piece[i > 0 ? i - 1 : 0]),
              .high_deg = angle_of(piece[std::min(i + 1, piece.size() - 1)]),
              .top_deg = angle_of(piece[i]),
              .value = values[i],
              .guess = values[i]};
    const Window near = about(piece, i, i + 1 == piece.size() ? 4 : 2, i == 0 ? 4 : 2);
    if (near.first == near.last) return hill;
    for (std::size_t k = near.first; k <= near.last; ++k) {
        hill.points.push_back({angle_of(piece[k]), values[k]});
    }
    const Interpolant curve = curve_through(hill.points);
    const double slope = curve.at(hill.top_deg).slope;
    if ((i == 0 && slope <= 0.0) || (i + 1 == piece.size() && slope >= 0.0)) {
        // Its end is the top, or else rises a little way from there: one look tells.
        constexpr double little = 0.02;
        hill.top_deg = std::lerp(hill.top_deg, i == 0 ? hill.high_deg : hill.low_deg, little);
        hill.at_end = true;
        return hill;
    }
    hill.top_deg = curve.top(hill.low_deg, hill.high_deg, hill.top_deg);
    hill.guess = std::max(hill.value, curve.at(hill.top_deg).value);
    return hill;
}

struct Top {
    Turn turn;
    double value;
};

/// The top of a hill, by the curve through what is known of it: all of that while the curve tells
/// the next value well, and only what lies nearest where it has kinks.
Top climbed(const Action& action, Hill hill, const TurnValue& value) {
    constexpr int most_steps = 12;
    constexpr std::size_t nearest = 4;
    Top best{*hill.node, hill.value};
    const auto look = [&](double angle) {
        Turn turn = turn_at(action, angle);
        const double found = value(turn);
        if (found > best.value) best = {std::move(turn), found};
        return found;
    };
    const double same = kSameShare * (hill.high_deg - hill.low_deg);
    double angle = hill.top_deg, guess = hill.guess;
    for (int step = 0; step < most_steps; ++step) {
        if (angle - hill.low_deg <= same || hill.high_deg - angle <= same) break;
        if (std::abs(angle - angle_of(&best.turn)) <= same) return best;
        const double found = look(angle);
        if (hill.at_end && found <= hill.value) return best;
        hill.points.push_back({angle, found});
        const bool told = std::abs(found - guess) <= kTold * std::abs(found);
        if (!told || hill.points.size() > Interpolant::kMostPoints) {
            const double at = angle_of(&best.turn);
            std::ranges::sort(hill.points, {},
                              [&](const Point& p) { return std::abs(p.angle_deg - at); });
            hill.points.resize(std::min(hill.points.size(), nearest));
        }
        const Interpolant curve = curve_through(hill.points);
        const double next = curve.top(hill.low_deg, hill.high_deg, angle_of(&best.turn));
        if (std::abs(next - angle) <= kShortDeg) return best;
        angle = next;
        guess = curve.at(next).value;
    }
    const auto at = [&](double x) { return value(turn_at(action, x)); };
    look(find_maximum(at, hill.low_deg, hill.high_deg));
    return best;
}

}  // namespace

Turn largest(const Action& action, std::span<const Piece> pieces, const TurnValue& value) {
    std::vector<Hill> hills;
    std::vector<double> values;
    const Hill* highest = nullptr;
    double most = 0.0;
    for (const Piece& piece : pieces) {
        values.clear();
        for (const Turn* turn : piece) values.push_back(value(*turn));
        for (std::size_t i = 0; i < piece.size(); ++i) {
            if (i > 0 && values[i] < values[i - 1]) continue;
            if (i + 1 < piece.size() && values[i] < values[i + 1]) continue;
            hills.push_back(make_hill(piece, i, values));
            most = hills.size() == 1 ? hills[0].guess : std::max(most, hills.back().guess);
        }
    }
    for (const Hill& hill : hills) {
        if (!highest || hill.value > highest->value) highest = &hill;
    }
    Top best{*highest->node, highest->value};
    for (const Hill& hill : hills) {
        if (hill.guess < most - kWorthALook * std::abs(most)) continue;
        if (!hill.at_end && hill.guess - hill.value <= kSameHeight * std::abs(hill.value)) continue;
        Top top = climbed(action, hill, value);
        if (top.value > best.value) best = std::move(top);
    }
    return best.turn;
}

Turn largest(const Turns& travel, const TurnValue& value) {
    return largest(travel.action(), travel.pieces(), value);
}

double zero_between(const Action& action,
                    const Piece& piece,
                    std::size_t i,
                    const TurnValue& value) {
    Interpolant curve;
    const Window near = about(piece, i, 2, 3);
    for (std::size_t k = near.first; k <= near.last; ++k) {
        curve.add(angle_of(piece[k]), value(*piece[k]));
    }
    double low = angle_of(piece[i]), high = angle_of(piece[i + 1]);
    double at_low = value(*piece[i]), at_high = value(*piece[i + 1]);
    if (at_low == 0.0) return low;
    const double same = kSameShare * (high - low);
    double angle = curve.zero(low, high, 0.5 * (low + high));
    while (!curve.full() && angle - low > same && high - angle > same) {
        const double here = value(turn_at(action, angle));
        if (here == 0.0) return angle;
        curve.add(angle, here);
        const bool as_low = (here < 0.0) == (at_low < 0.0);
        (as_low ? low : high) = angle;
        (as_low ? at_low : at_high) = here;
        const double next = curve.zero(low, high, angle);
        if (std::abs(next - angle) <= kThereDeg) return next;
        angle = next;
    }
    const auto at = [&](double x) { return value(turn_at(action, x)); };
    return find_crossing(at, low, high, at_low, at_high);
}

double integral(std::span<const Piece> pieces,
                double from_deg,
                double to_deg,
                const TurnValue& value) {
    double sum = 0.0;
    for (const Piece& piece : pieces) {
        for (std::size_t i = 0; i + 1 < piece.size(); ++i) {
            const double low = std::max(angle_of(piece[i]), from_deg);
            const double high = std::min(angle_of(piece[i + 1]), to_deg);
            if (!(high > low)) continue;
            Interpolant curve;
            const Window near = about(piece, i, 2, 3);
            for (std::size_t k = near.first; k <= near.last; ++k) {
                curve.add(radians(angle_of(piece[k])), value(*piece[k]));
            }
            sum += curve.integral(radians(low), radians(high));
        }
    }
    return sum;
}

}  // namespace backspring

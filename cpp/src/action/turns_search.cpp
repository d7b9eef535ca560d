#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "backspring/action/turns.hpp"
#include "backspring/core/interpolant.hpp"
#include "backspring/core/root.hpp"
#include "window.hpp"

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
constexpr double kSameShare = 1e-9;

/// A place of a curve.
struct Point {
    double angle_deg, value;
};

/// Places about a hill, one more than a curve goes through.
class Points {
  public:
    void add(double angle_deg, double value) { points_[count_++] = {angle_deg, value}; }
    [[nodiscard]] std::size_t size() const { return count_; }

    void keep_nearest(double angle_deg, std::size_t most) {
        const auto away = [&](const Point& p) { return std::abs(p.angle_deg - angle_deg); };
        std::ranges::sort(std::span(points_).first(count_), {}, away);
        count_ = std::min(count_, most);
    }

    [[nodiscard]] Interpolant curve() const {
        Interpolant curve;
        for (std::size_t i = 0; i < count_; ++i) curve.add(points_[i].angle_deg, points_[i].value);
        return curve;
    }

  private:
    std::array<Point, Interpolant::kMostPoints + 1> points_;
    std::size_t count_ = 0;
};

/// A piece's turn that its neighbours do not pass, and how its curve goes there.
struct Hill {
    const Piece* piece;
    std::size_t place;  ///< of the turn in it
    const Turn* node;
    double value;
    double low_deg, high_deg;
    double top_deg = angle_of(node), guess = value;
    Points points{};      ///< about it
    Interpolant curve{};  ///< through them
    bool at_end = false;  ///< of the piece, from where the curve falls
};

/// The values of a piece's turns.
using Values = std::span<const double>;

Hill make_hill(const Piece& piece, std::size_t i, const Values& values) {
    Hill hill{.piece = &piece,
              .place = i,
              .node = piece[i],
              .value = values[i],
              .low_deg = angle_of(piece[i > 0 ? i - 1 : 0]),
              .high_deg = angle_of(piece[std::min(i + 1, piece.size() - 1)])};
    const Window near = about(piece, i, i + 1 == piece.size() ? 4 : 2, i == 0 ? 4 : 2);
    if (near.first == near.last) return hill;
    for (std::size_t k = near.first; k <= near.last; ++k) {
        hill.points.add(angle_of(piece[k]), values[k]);
    }
    hill.curve = hill.points.curve();
    const Interpolant& curve = hill.curve;
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

/// By how much a parabola through a turn and its neighbours, or the two next to an end, rises above
/// it within the piece.
double parabola_rise(const Piece& piece, std::size_t i, const Values& values) {
    const std::size_t j = std::clamp<std::size_t>(i, 1, piece.size() - 2);
    const double behind = angle_of(piece[j]) - angle_of(piece[j - 1]);
    const double ahead = angle_of(piece[j + 1]) - angle_of(piece[j]);
    const double left = (values[j] - values[j - 1]) / behind;
    const double right = (values[j + 1] - values[j]) / ahead;
    const double curvature = 2.0 * (right - left) / (behind + ahead);
    double slope = (left * ahead + right * behind) / (behind + ahead);
    slope += curvature * (angle_of(piece[i]) - angle_of(piece[j]));
    if ((i < j && slope <= 0.0) || (i > j && slope >= 0.0)) return 0.0;
    return curvature < 0.0 ? -0.5 * slope * slope / curvature : 0.0;
}

/// Whether a hill, however its curve goes, stays too low to be worth a look.
bool far_below(double most, const Piece& piece, std::size_t i, const Values& values) {
    constexpr double times_looked_at = 2.0, times_parabola = 10.0;
    if (piece.size() < 3) return false;
    const double below = most - values[i] - times_looked_at * kWorthALook * std::abs(most);
    return below > 0.0 && below > times_parabola * parabola_rise(piece, i, values);
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
    PlaceCurve way = way_about(action, *hill.piece, about(*hill.piece, hill.place, 2, 2));
    const auto look = [&](double angle) {
        Turn turn = turn_near(action, angle, way);
        way.add(turn.contact);
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
        hill.points.add(angle, found);
        const bool told = std::abs(found - guess) <= kTold * std::abs(found);
        if (!told || hill.points.size() > Interpolant::kMostPoints) {
            hill.points.keep_nearest(angle_of(&best.turn), nearest);
            hill.curve = hill.points.curve();
        } else {
            hill.curve.add(angle, found);
        }
        const double next = hill.curve.top(hill.low_deg, hill.high_deg, angle_of(&best.turn));
        if (std::abs(next - angle) <= kShortDeg) return best;
        angle = next;
        guess = hill.curve.value_at(next);
    }
    const auto at = [&](double x) { return value(turn_near(action, x, way)); };
    look(find_maximum(at, hill.low_deg, hill.high_deg));
    return best;
}

}  // namespace

Turn largest(const Action& action, std::span<const Piece> pieces, const TurnValue& value) {
    std::size_t count = 0;
    for (const Piece& piece : pieces) count += piece.size();
    std::vector<double> values;
    values.reserve(count);
    for (const Piece& piece : pieces) {
        for (const Turn* turn : piece) values.push_back(value(*turn));
    }
    const double highest = *std::ranges::max_element(values);
    std::vector<Hill> hills;
    hills.reserve(pieces.size() + 2);
    std::size_t first = 0;
    double most = highest;
    for (const Piece& piece : pieces) {
        const Values own = Values(values).subspan(first, piece.size());
        first += piece.size();
        for (std::size_t i = 0; i < piece.size(); ++i) {
            if (i > 0 && own[i] < own[i - 1]) continue;
            if (i + 1 < piece.size() && own[i] < own[i + 1]) continue;
            if (far_below(highest, piece, i, own)) continue;
            hills.push_back(make_hill(piece, i, own));
            most = std::max(most, hills.back().guess);
        }
    }
    const Hill& top_node = *std::ranges::max_element(hills, {}, &Hill::value);
    Top best{*top_node.node, top_node.value};
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

}  // namespace backspring

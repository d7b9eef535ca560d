#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "backspring/action/turns.hpp"
#include "backspring/core/interpolant.hpp"
#include "backspring/core/root.hpp"
#include "curve_search.hpp"
#include "hills.hpp"
#include "piece_curve.hpp"
#include "window.hpp"

namespace backspring {
namespace {

// Of a value: less is rounding.
constexpr double kSameHeight = 1e-13;
// Likewise where curves have told all tops so far.
constexpr double kWorthALookTold = 1e-4;
// What a curve adds is told so closely.
constexpr double kOfRise = 0.1;
// What a step so short leaves of a smooth top is rounding.
constexpr double kShortDeg = 1e-5;
constexpr double kSameShare = 1e-9;

struct Top {
    const Turn* node;             ///< it is this one
    std::optional<Turn> between;  ///< unless that is known
    double value;

    [[nodiscard]] double angle_deg() const { return angle_of(between ? &*between : node); }
    [[nodiscard]] Turn turn() && { return between ? *std::move(between) : *node; }
};

/// Looks about a hill, by what is known of how the touch goes there.
class Climb {
  public:
    Climb(const Action& action, const Hill& hill, const TurnValue& value)
        : action_(action),
          hill_(hill),
          value_(value),
          low_deg_(hill.low_deg()),
          high_deg_(hill.high_deg()),
          best_{hill.node(), {}, hill.value()} {
        if (hill.piece->size() == 1) return;
        const PieceCurve curve(*hill.piece, hill.values);
        const double node_deg = angle_of(hill.node());
        const bool at_end = hill.at_first() || hill.at_last();
        if (at_end && curve.at(node_deg).slope * (hill.at_first() ? 1.0 : -1.0) <= 0.0) {
            // Its end is the top, or else rises a little way from there: one look tells.
            constexpr double little = 0.02;
            top_.x = std::lerp(node_deg, hill.at_first() ? high_deg_ : low_deg_, little);
            end_is_top_ = true;
        } else {
            const double near = node_deg + hill.ahead;
            const bool inside = action.joint.alone() && near > low_deg_ && near < high_deg_;
            top_ = top_of(curve, low_deg_, high_deg_, inside ? near : node_deg);
        }
    }

    /// What the curve tells of the top.
    [[nodiscard]] double guess() const { return std::max(hill_.value(), top_.value); }

    /// Whether there may be more than the turn is.
    [[nodiscard]] bool may_rise() const {
        return end_is_top_ || guess() - hill_.value() > kSameHeight * std::abs(hill_.value());
    }

    /// The top, by the curve through the piece where that tells it well.
    [[nodiscard]] Top top() {
        if (on_end(top_.x)) return std::move(best_);
        way_.emplace(way_about(action_, *hill_.piece, hill_.place));
        const double found = look(top_.x);
        if (end_is_top_) {
            if (found > hill_.value()) by_nearest(top_.x, found);
            return std::move(best_);
        }
        // As the curve's error grows over the way to the next turn, so it moves the top.
        constexpr double times = 4.0;
        const double slope = times * std::abs(found - top_.value) / (high_deg_ - low_deg_);
        if (slope > kShortDeg * std::abs(top_.curvature)) by_nearest(top_.x, found);
        return std::move(best_);
    }

    /// Whether the curve through the piece tells its values: its last two terms, in Chebyshev's
    /// polynomials, are next to nothing, and what it lacks is less than the last.
    [[nodiscard]] bool curve_tells() const {
        constexpr double last = 1e-10, before_last = 1e-9;
        const std::size_t parts = hill_.values.size() - 1;
        if (parts < 2 * kFewestParts) return false;
        double end = 0.0, before = 0.0;
        for (std::size_t k = 0; k <= parts; ++k) {
            const double term = chebyshev_weight(parts, k) * hill_.values[k];
            end += term;
            before += term * (1.0 - 2.0 * chebyshev_share(parts, k));
        }
        const double most = std::abs(hill_.value()) * static_cast<double>(parts);
        return std::abs(end) <= last * most && std::abs(2.0 * before) <= before_last * most;
    }

    /// What the curve tells.
    [[nodiscard]] Peak curve_top() const {
        const bool at_node = end_is_top_ || on_end(top_.x) || !(top_.value > hill_.value());
        return at_node ? Peak{hill_.value(), angle_of(hill_.node())} : Peak{top_.value, top_.x};
    }

    /// Whether the curve told the top.
    [[nodiscard]] bool told() const { return told_; }

  private:
    /// A place seen.
    struct Point {
        double angle_deg, value;
    };

    [[nodiscard]] bool on_end(double angle_deg) const {
        const double same = kSameShare * (high_deg_ - low_deg_);
        return angle_deg - low_deg_ <= same || high_deg_ - angle_deg <= same ||
               std::abs(angle_deg - angle_of(hill_.node())) <= same;
    }

    double look(double angle_deg) {
        Turn turn = turn_near(action_, angle_deg, *way_);
        way_->add(turn.contact);
        const double found = value_(turn);
        if (found > best_.value) best_.between = std::move(turn), best_.value = found;
        return found;
    }

    /// By curves through the places that lie nearest, for it may have kinks.
    void by_nearest(double angle_deg, double found) {
        constexpr int most_steps = 12;
        constexpr std::size_t few = 4;
        told_ = false;
        const Window near = nearest(*hill_.piece, hill_.place);
        std::vector<Point> points;
        for (std::size_t k = near.first; k <= near.last; ++k) {
            points.push_back({angle_of((*hill_.piece)[k]), hill_.values[k]});
        }
        double angle = angle_deg;
        for (int step = 0; step < most_steps; ++step) {
            points.push_back({angle, found});
            const double best = angle_of(best_.between ? &*best_.between : best_.node);
            std::ranges::sort(points, {},
                              [&](const Point& p) { return std::abs(p.angle_deg - best); });
            Interpolant curve;
            for (std::size_t k = 0; k < std::min(few, points.size()); ++k) {
                curve.add(points[k].angle_deg, points[k].value);
            }
            const double next = top_of(curve, low_deg_, high_deg_, best).x;
            if (std::abs(next - angle) <= kShortDeg || std::abs(next - best) <= kSameShare) return;
            if (on_end(next)) break;
            angle = next;
            found = look(angle);
        }
        const auto at = [&](double x) { return value_(turn_near(action_, x, *way_)); };
        look(find_maximum(at, low_deg_, high_deg_));
    }

    const Action& action_;
    const Hill& hill_;
    const TurnValue& value_;
    std::optional<PlaceCurve> way_;
    double low_deg_, high_deg_;
    CurveTop top_{0.0, -std::numeric_limits<double>::infinity(), 0.0};  ///< of the curve
    bool end_is_top_ = false, told_ = true;
    Top best_;
};

/// Climbs those hills that may be the highest.
///
/// @param best  the highest value so far
template <class Look>
void climb_all(const Action& action,
               const std::vector<Hill>& hills,
               const TurnValue& value,
               const double& best,
               const Look& look) {
    bool smooth = action.joint.alone();
    for (const Hill& hill : hills) {
        const double enough = best - (smooth ? kWorthALookTold : kWorthALook) * std::abs(best);
        if (hill.guess() + hill.rise < enough || (smooth && hill.falls)) continue;
        Climb climb(action, hill, value);
        const double doubt = kOfRise * (climb.guess() - hill.value());
        if (climb.guess() + doubt < enough || !climb.may_rise()) continue;
        look(climb);
        smooth = smooth && climb.told();
    }
}

}  // namespace

Turn largest(const Action& action, std::span<const Piece> pieces, const TurnValue& value) {
    std::size_t count = 0;
    for (const Piece& piece : pieces) count += piece.size();
    std::vector<double> values(count);
    auto next = values.begin();
    for (const Piece& piece : pieces) {
        for (const Turn* turn : piece) *next++ = value(*turn);
    }
    const std::vector<Hill> hills = hills_of(pieces, values);
    const Hill& top_node = *std::ranges::max_element(hills, {}, &Hill::value);
    Top best{top_node.node(), {}, top_node.value()};
    climb_all(action, hills, value, best.value, [&](Climb& climb) {
        Top top = climb.top();
        if (top.value > best.value) best = std::move(top);
    });
    return std::move(best).turn();
}

Peak detail::peak_of(const Action& action,
                     std::span<const Piece> pieces,
                     const Values& values,
                     const TurnValue& value) {
    const std::vector<Hill> hills = hills_of(pieces, values);
    const Hill& top_node = *std::ranges::max_element(hills, {}, &Hill::value);
    Peak best{top_node.value(), angle_of(top_node.node())};
    const auto take_in = [&](const Peak& peak) {
        if (peak.value > best.value) best = peak;
    };
    climb_all(action, hills, value, best.value, [&](Climb& climb) {
        if (climb.curve_tells()) return take_in(climb.curve_top());
        const Top top = climb.top();
        take_in({top.value, top.angle_deg()});
    });
    return best;
}

Turn largest(const Turns& travel, const TurnValue& value) {
    return largest(travel.action(), travel.pieces(), value);
}

}  // namespace backspring

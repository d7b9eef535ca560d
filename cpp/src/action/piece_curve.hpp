#pragma once

#include <array>
#include <cstddef>
#include <span>

#include "backspring/action/turns.hpp"
#include "backspring/core/interpolant.hpp"
#include "chebyshev.hpp"

namespace backspring::detail {

/// The polynomial through values of all turns of a piece, by the angle in degrees.
class PieceCurve {
  public:
    /// @param values  of the piece's turns
    PieceCurve(const Piece& piece, std::span<const double> values) : count_(values.size()) {
        for (std::size_t k = 0; k < count_; ++k) {
            points_[k] = {angle_of(piece[k]), values[k], chebyshev_weight(count_ - 1, k)};
        }
    }

    [[nodiscard]] double value_at(double angle_deg) const {
        double above = 0.0, below = 0.0;
        for (const Point& point : points()) {
            const double away = angle_deg - point.angle_deg;
            if (away == 0.0) return point.value;
            const double share = point.weight / away;
            above += share * point.value;
            below += share;
        }
        return above / below;
    }

    /// Value and derivatives; at a turn, those right beside it.
    [[nodiscard]] Interpolant::Jet at(double angle_deg) const {
        Interpolant::Jet above, below;
        for (std::size_t k = 0; k < count_; ++k) {
            const Point& point = points_[k];
            const double away = angle_deg - point.angle_deg;
            if (away == 0.0) {
                const double beside = count_ > 1 ? angle_deg + nudge_deg(k) : angle_deg;
                // A piece may be so short that no angle lies beside its turns.
                if (beside == angle_deg) return {.value = point.value};
                return at(beside);
            }
            const double per_away = 1.0 / away, share = point.weight * per_away;
            const double slope = share * per_away, curvature = slope * per_away;
            above.value += share * point.value;
            above.slope -= slope * point.value;
            above.curvature += curvature * point.value;
            below.value += share;
            below.slope -= slope;
            below.curvature += curvature;
        }
        const double per_below = 1.0 / below.value, value = above.value * per_below;
        const double slope = (above.slope - value * below.slope) * per_below;
        const double bend = above.curvature - value * below.curvature - slope * below.slope;
        return {value, slope, 2.0 * bend * per_below};
    }

  private:
    struct Point {
        double angle_deg, value, weight;
    };

    [[nodiscard]] std::span<const Point> points() const { return {points_.data(), count_}; }

    /// So little from a turn, towards the next within the piece.
    [[nodiscard]] double nudge_deg(std::size_t k) const {
        constexpr double little = 1e-4;
        const Point& next = points_[k + 1 == count_ ? k - 1 : k + 1];
        return little * (next.angle_deg - points_[k].angle_deg);
    }

    std::array<Point, kMostPlaces> points_;
    std::size_t count_;
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

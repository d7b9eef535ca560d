#include "backspring/tang/envelope.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace backspring {
namespace {

// Joints of arcs and flats are met by either, within rounding of their slopes and places.
constexpr double kJoint = 1e-12;

/// Of an arc with this crown, above a station.
std::optional<SurfacePoint> on_arc(const SurfacePoint& crown, double radius_mm, double x_mm) {
    const double away = crown.x_mm - x_mm;
    if (!(std::abs(away) < radius_mm)) return std::nullopt;
    const double out = std::sqrt((radius_mm - away) * (radius_mm + away));
    return SurfacePoint{x_mm, crown.y_mm - radius_mm + out, away / out, crown.arc};
}

}  // namespace

TurnedOutline::TurnedOutline(std::span<const Arc> arcs, double turn_rad)
    : arcs_(arcs), turn_rad_(turn_rad), cos_(std::cos(turn_rad)), sin_(std::sin(turn_rad)) {}

double TurnedOutline::slope_at(double normal_rad) const {
    constexpr double grazing = 1.0 / kSteep;
    const double turned = normal_rad + turn_rad_;
    if (turned < grazing) return -kSteep;
    if (turned > std::numbers::pi - grazing) return kSteep;
    return -std::cos(turned) / std::sin(turned);
}

int TurnedOutline::level_arc() const {
    int arc = 0;
    while (arc + 1 < count() && at(arc).to_rad + turn_rad_ < 0.5 * std::numbers::pi) ++arc;
    return arc;
}

std::optional<SurfacePoint> TurnedOutline::top_of(int arc, double x_mm) const {
    auto top = on_arc(at_slope(arc, 0.0), radius_mm(arc), x_mm);
    if (top && !surely_has(arc, top->slope)) top.reset();
    return top;
}

std::optional<SurfacePoint> TurnedOutline::top_at(double x_mm) const {
    std::optional<SurfacePoint> top;
    const auto consider = [&](double y, double slope, int arc, bool flat) {
        if (!top || y > top->y_mm) top = SurfacePoint{x_mm, y, slope, arc, flat};
    };
    const auto look = [&](double joint) {
        double low = 0.0, high = 0.0;
        for (int i = 0; i < count(); ++i) {
            // A flat's two ends have one normal.
            const bool flat_ahead = i > 0 && at(i).from_rad == at(i - 1).to_rad;
            low = flat_ahead ? high : lowest_slope(i);
            high = highest_slope(i);
            const SurfacePoint front = at_slope(i, low), rear = at_slope(i, high);
            const double r = radius_mm(i);
            if (r > 0.0 && x_mm >= rear.x_mm - joint && x_mm <= front.x_mm + joint) {
                const auto on = on_arc(at_slope(i, 0.0), r, x_mm);
                if (on) consider(on->y_mm, on->slope, i, false);
            }
            if (i + 1 == count() || std::abs(high) >= kSteep) continue;
            const SurfacePoint behind = at_slope(i + 1, high);
            if (x_mm <= rear.x_mm + joint && x_mm >= behind.x_mm - joint) {
                consider(rear.y_mm + high * (x_mm - rear.x_mm), high, i, true);
            }
        }
    };
    // A steep flat drawn out past its end would seem to stand above what follows.
    look(0.0);
    if (!top) look(kJoint);
    return top;
}

}  // namespace backspring

#include "bearer.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "backspring/core/angle.hpp"
#include "backspring/tang/envelope.hpp"

namespace backspring {
namespace {

struct Nearest {
    double away_mm = std::numeric_limits<double>::infinity();
    Bearer bearer;

    void consider(double away, int arc, std::optional<double> normal_rad) {
        if (!(away < away_mm)) return;
        away_mm = away;
        bearer = {.arc = arc, .normal_rad = normal_rad, .hold = Hold::slopes_agree};
    }
};

/// A touch as seen from the pivot.
SurfacePoint seen(const Joint& joint, const Touch& touch) {
    return {touch.x_mm - joint.pivot_mm, touch.height_mm, touch.slope};
}

double distance(const SurfacePoint& a, const SurfacePoint& b) {
    return std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm);
}

double from_flat(const SurfacePoint& place, const SurfacePoint& front, const SurfacePoint& rear) {
    const double x = std::clamp(place.x_mm, std::min(rear.x_mm, front.x_mm), front.x_mm);
    return distance(place, {x, front.y_mm + front.slope * (x - front.x_mm), front.slope});
}

void look_along(Nearest& nearest, const TurnedOutline& outline, int first, const SurfacePoint& at) {
    for (int i = 0; i < outline.count(); ++i) {
        const double low = outline.lowest_slope(i), high = outline.highest_slope(i);
        const double slope = std::clamp(at.slope, low, std::max(low, high));
        nearest.consider(distance(at, outline.at_slope(i, slope)), first + i, std::nullopt);
    }
}

}  // namespace

Bearer detail::find_bearer(const Joint& joint, double blade_angle_deg, const Touch& touch) {
    const double turn = radians(blade_angle_deg) - std::numbers::pi;
    const std::vector<Arc>& arcs = joint.outline.body;
    const TurnedOutline body(arcs, turn);
    const SurfacePoint place = seen(joint, touch);
    Nearest nearest;
    look_along(nearest, body, 0, place);
    for (int i = 0; i + 1 < body.count(); ++i) {
        const double slope = body.highest_slope(i);
        if (std::abs(slope) >= TurnedOutline::kSteep) continue;
        const SurfacePoint front = body.at_slope(i, slope), rear = body.at_slope(i + 1, slope);
        nearest.consider(from_flat(place, front, rear), i,
                         arcs[static_cast<std::size_t>(i)].to_rad);
    }
    if (joint.outline.kick) {
        look_along(nearest, TurnedOutline({&*joint.outline.kick, 1}, turn), body.count(), place);
    }
    Bearer bearer = nearest.bearer;
    if (touch.x_mm == joint.pad.start_mm) bearer.hold = Hold::pad_start;
    if (touch.x_mm == joint.pad.end_mm) bearer.hold = Hold::pad_end;
    return bearer;
}

}  // namespace backspring

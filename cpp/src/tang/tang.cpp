#include "backspring/tang/tang.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "backspring/tang/drawn_outline.hpp"

namespace backspring {

double round_end_radius_mm(const Tang& tang) {
    if (tang.round_end_mm) return *tang.round_end_mm;
    const double square_end = 0.5 * (tang.open_mm + tang.closed_mm);
    const auto reach = [&](double face, double radius) {
        return std::hypot(square_end - radius, face - radius) + radius;
    };
    return std::max(reach(tang.open_mm, tang.corner_open_mm),
                    reach(tang.closed_mm, tang.corner_closed_mm));
}

double rear_reach_mm(const Tang& tang) {
    if (!tang.outline.empty()) return reach_mm(make_outline(tang, 0.0).body, std::numbers::pi);
    return tang.half_stop_mm ? *tang.half_stop_mm : round_end_radius_mm(tang);
}

double front_reach_mm(const Tang& tang) {
    if (tang.outline.empty()) return tang.front_mm;
    const Arc front = make_outline(tang, 0.0).body.front();
    return front.u_mm + front.radius_mm;
}

}  // namespace backspring

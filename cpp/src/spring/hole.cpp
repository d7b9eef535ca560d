#include "backspring/spring/hole.hpp"

#include <algorithm>
#include <cmath>

namespace backspring {

const Hole* hole_for(HoleFor pin, std::span<const Hole> holes) {
    const auto found =
        std::find_if(holes.begin(), holes.end(), [&](const Hole& hole) { return hole.pin == pin; });
    return found == holes.end() ? nullptr : &*found;
}

double chord_mm(const Hole& hole, double x_mm) {
    const double radius = 0.5 * hole.diameter_mm;
    const double away = x_mm - hole.center_mm;
    const double inside = (radius - away) * (radius + away);
    return inside > 0.0 ? 2.0 * std::sqrt(inside) : 0.0;
}

}  // namespace backspring

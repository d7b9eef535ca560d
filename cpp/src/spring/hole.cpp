#include "backspring/spring/hole.hpp"

#include <cmath>

namespace backspring {

double chord_mm(const Hole& hole, double x_mm) {
    const double radius = 0.5 * hole.diameter_mm;
    const double away = x_mm - hole.center_mm;
    const double inside = (radius - away) * (radius + away);
    return inside > 0.0 ? 2.0 * std::sqrt(inside) : 0.0;
}

}  // namespace backspring

#include "backspring/spring/mid_line.hpp"

#include <cmath>
#include <cstddef>

#include "along.hpp"

namespace backspring {
namespace {

// A bend this slight is rounding: a radius of a kilometre.
constexpr double kStraightPerMm = 1e-6;

/// Curvature of the circle through three points, + where it bends towards the back.
double curvature_per_mm(const MidLinePoint& a, const MidLinePoint& b, const MidLinePoint& c) {
    const double ab_x = b.x_mm - a.x_mm, ab_y = b.height_mm - a.height_mm;
    const double bc_x = c.x_mm - b.x_mm, bc_y = c.height_mm - b.height_mm;
    const double sides =
        std::hypot(ab_x, ab_y) * std::hypot(bc_x, bc_y) * std::hypot(ab_x + bc_x, ab_y + bc_y);
    return 2.0 * (ab_x * bc_y - ab_y * bc_x) / sides;
}

}  // namespace

double height_mm(const MidLine& line, double x_mm) {
    return along(std::span(line), &MidLinePoint::height_mm, x_mm);
}

double slope(const MidLine& line, double x_mm) {
    for (std::size_t i = 1; i < line.size(); ++i) {
        if (x_mm < line[i - 1].x_mm) break;
        if (x_mm >= line[i].x_mm) continue;
        return (line[i].height_mm - line[i - 1].height_mm) / (line[i].x_mm - line[i - 1].x_mm);
    }
    return 0.0;
}

std::vector<HollowCurve> hollow_curves(const MidLine& line) {
    std::vector<HollowCurve> hollow;
    for (std::size_t i = 1; i + 1 < line.size(); ++i) {
        const bool step = line[i - 1].x_mm == line[i].x_mm || line[i].x_mm == line[i + 1].x_mm;
        if (step) continue;
        const double curvature = curvature_per_mm(line[i - 1], line[i], line[i + 1]);
        if (curvature < -kStraightPerMm) hollow.push_back({line[i].x_mm, -1.0 / curvature});
    }
    return hollow;
}

}  // namespace backspring

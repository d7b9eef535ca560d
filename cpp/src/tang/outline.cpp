#include "backspring/tang/outline.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace backspring {
namespace {

constexpr double kPi = std::numbers::pi;

Arc edge(double u_mm, double w_mm, double from_rad) {
    return {u_mm, w_mm, 0.0, from_rad, from_rad + 0.5 * kPi};
}

std::vector<Arc> square_end(const Tang& tang) {
    const double end = -*tang.half_stop_mm;
    const double r1 = tang.corner_open_mm, r2 = tang.corner_closed_mm;
    return {{end + r1, tang.open_mm - r1, r1, 0.5 * kPi, kPi},
            {end + r2, r2 - tang.closed_mm, r2, kPi, 1.5 * kPi}};
}

std::vector<Arc> round_end(const Tang& tang) {
    const double rho = round_end_radius_mm(tang);
    const auto behind = [&](double face, double radius) {
        const double along = rho - radius, across = face - radius;
        return -std::sqrt(std::max((along - across) * (along + across), 0.0));
    };
    const double r1 = tang.corner_open_mm, r2 = tang.corner_closed_mm;
    const double u1 = behind(tang.open_mm, r1), w1 = tang.open_mm - r1;
    const double u2 = behind(tang.closed_mm, r2), w2 = r2 - tang.closed_mm;
    // Corner and end disc touch where both normals point away from the pivot through the corner's
    // centre.
    const double join1 = std::atan2(w1, u1), join2 = std::atan2(w2, u2) + 2.0 * kPi;
    return {{u1, w1, r1, 0.5 * kPi, join1},
            {0.0, 0.0, rho, join1, join2},
            {u2, w2, r2, join2, 1.5 * kPi}};
}

}  // namespace

Outline make_outline(const Tang& tang, double reach_mm) {
    Outline outline;
    outline.body.push_back(edge(tang.front_mm, tang.open_mm, 0.0));
    for (const Arc& arc : tang.half_stop_mm ? square_end(tang) : round_end(tang)) {
        outline.body.push_back(arc);
    }
    outline.body.push_back(edge(reach_mm, -tang.closed_mm, 1.5 * kPi));
    if (tang.kick) {
        const double nose = tang.closed_mm + tang.kick->height_mm - tang.kick->radius_mm;
        outline.kick =
            Arc{tang.kick->distance_mm, -nose, tang.kick->radius_mm, 0.5 * kPi, 2.5 * kPi};
    }
    return outline;
}

double swept_radius_mm(const Outline& outline) {
    double farthest = 0.0;
    const auto consider = [&](const Arc& arc) {
        farthest = std::max(farthest, std::hypot(arc.u_mm, arc.w_mm) + arc.radius_mm);
    };
    std::for_each(outline.body.begin() + 1, outline.body.end() - 1, consider);
    if (outline.kick) consider(*outline.kick);
    return farthest;
}

}  // namespace backspring

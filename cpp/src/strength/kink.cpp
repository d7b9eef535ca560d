#include "backspring/strength/kink.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "backspring/core/angle.hpp"
#include "within.hpp"

namespace backspring {
namespace {

constexpr double kLeastRoot = 0.01;
constexpr double kReach = 0.9;
constexpr double kRounding = 1e-9;
constexpr double kOfCurveDeg = 2.0;

/// How deep the belly lies under a line along the pad; at a step both sides.
Profile belly_depth(const Spring& spring) {
    std::vector<double> places;
    for (const Station& s : spring.thickness) places.push_back(s.x_mm);
    for (const MidLinePoint& p : spring.mid_line) places.push_back(p.x_mm);
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end()), places.end());
    const auto depth = [&](double x) {
        return 0.5 * thickness_mm(spring.thickness, x) - height_mm(spring.mid_line, x);
    };
    Profile rows;
    for (const double x : places) {
        const double behind = depth(std::nextafter(x, -std::numeric_limits<double>::infinity()));
        if (std::abs(depth(x) - behind) > kRounding) rows.push_back({x, behind});
        rows.push_back({x, depth(x)});
    }
    return rows;
}

}  // namespace

std::vector<Kink> find_kinks(const Profile& profile) {
    std::vector<Kink> found;
    for (std::size_t i = 1; i + 1 < profile.size(); ++i) {
        const Station &before = profile[i - 1], &here = profile[i], &behind = profile[i + 1];
        if (before.x_mm == here.x_mm || here.x_mm == behind.x_mm) continue;
        const auto incline = [](const Station& a, const Station& b) {
            return std::atan2(b.thickness_mm - a.thickness_mm, b.x_mm - a.x_mm);
        };
        const double angle = incline(here, behind) - incline(before, here);
        if (angle > kRounding) found.push_back({here.x_mm, here.thickness_mm, angle});
    }
    return found;
}

std::vector<Kink> find_kinks(const Spring& spring) {
    if (spring.mid_line.empty()) return find_kinks(spring.thickness);
    std::vector<Kink> found = find_kinks(belly_depth(spring));
    std::erase_if(found, [](const Kink& kink) { return kink.angle_rad < radians(kOfCurveDeg); });
    for (Kink& kink : found) kink.thickness_mm = thickness_mm(spring.thickness, kink.station_mm);
    return found;
}

double kink_factor(double angle_rad, double thickness_mm, double root_radius_mm) {
    const double a = angle_rad;
    require_within("kink angle in degrees", a * 180.0 / std::numbers::pi, -90.0, 45.0);
    require_at_least("root radius over thickness", root_radius_mm / thickness_mm, kLeastRoot);
    if (a <= 0.0) return 1.0;
    const double reach = kReach * thickness_mm / (root_radius_mm * a);
    return std::max(1.0, std::pow(reach, 2.0 * a / (std::numbers::pi + 2.0 * a)));
}

}  // namespace backspring

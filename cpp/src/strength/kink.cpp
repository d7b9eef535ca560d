#include "backspring/strength/kink.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "within.hpp"

namespace backspring {
namespace {

constexpr double kLeastRoot = 0.01;
constexpr double kReach = 0.9;
constexpr double kRounding = 1e-9;

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

double kink_factor(double angle_rad, double thickness_mm, double root_radius_mm) {
    const double a = angle_rad;
    require_within("kink angle in degrees", a * 180.0 / std::numbers::pi, -90.0, 45.0);
    require_at_least("root radius over thickness", root_radius_mm / thickness_mm, kLeastRoot);
    if (a <= 0.0) return 1.0;
    const double reach = kReach * thickness_mm / (root_radius_mm * a);
    return std::max(1.0, std::pow(reach, 2.0 * a / (std::numbers::pi + 2.0 * a)));
}

}  // namespace backspring

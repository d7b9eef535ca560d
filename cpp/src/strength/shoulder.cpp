#include "backspring/strength/shoulder.hpp"

#include <algorithm>

#include "notch_polynomial.hpp"
#include "within.hpp"

namespace backspring {
namespace {

constexpr std::array<NotchRow, 4> kBlunt{{{1.007, 1.000, -0.031},
                                          {-0.270, -2.404, 0.749},
                                          {0.677, 1.133, -0.904},
                                          {-0.414, 0.271, 0.186}}};
constexpr std::array<NotchRow, 4> kSharp{{{1.042, 0.982, -0.036},
                                          {-3.599, 1.619, -0.431},
                                          {6.084, -5.607, 1.158},
                                          {-2.527, 3.006, -0.691}}};
constexpr double kSharpFrom = 2.0;
constexpr double kOneSided = 2.0;

}  // namespace

std::vector<Shoulder> find_shoulders(const Profile& profile) {
    std::vector<Shoulder> found;
    for (std::size_t i = 1; i < profile.size(); ++i) {
        const Station &before = profile[i - 1], &behind = profile[i];
        if (before.x_mm != behind.x_mm || before.thickness_mm == behind.thickness_mm) continue;
        const auto [small, large] = std::minmax(before.thickness_mm, behind.thickness_mm);
        found.push_back({behind.x_mm, large, small});
    }
    return found;
}

double shoulder_factor(double large_mm, double small_mm, double fillet_mm) {
    const double height = 0.5 * (large_mm - small_mm), x = 2.0 * height / large_mm;
    require_within("step over thick side", x, 0.0, 1.0);
    const double sharpness = height / fillet_mm;
    require_within("step on each face over fillet radius", sharpness, 0.1, 20.0);
    const auto& rows = sharpness <= kSharpFrom ? kBlunt : kSharp;
    return std::max(1.0, notch_polynomial(rows, sharpness, x));
}

double one_sided_shoulder_factor(double large_mm, double small_mm, double fillet_mm) {
    const double height = large_mm - small_mm;
    require_within("step over thin side", height / small_mm, 0.05, 2.0);
    require_within("fillet radius over thin side", fillet_mm / small_mm, 0.05, 1.0);
    const double small = kOneSided * small_mm;
    return shoulder_factor(small + 2.0 * height, small, fillet_mm);
}

}  // namespace backspring

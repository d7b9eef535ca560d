#include "backspring/strength/groove.hpp"

#include <algorithm>

#include "notch_polynomial.hpp"
#include "within.hpp"

namespace backspring {
namespace {

constexpr std::array<NotchRow, 4> kBluntGroove{{{0.723, 2.845, -0.504},
                                          {-1.836, -5.746, 1.314},
                                          {7.254, -1.885, 1.646},
                                          {-5.140, 4.785, -2.456}}};
constexpr std::array<NotchRow, 4> kSharpGroove{{{0.833, 2.069, -0.009},
                                          {0.024, -5.383, 0.126},
                                          {-0.856, 6.460, -0.199},
                                          {0.999, -3.146, 0.082}}};
constexpr double kSharpGrooveFrom = 2.0;
constexpr double kOneSidedGroove = 1.5;

}  // namespace

double groove_factor(double thickness_mm, double depth_mm, double radius_mm) {
    const double x = 2.0 * depth_mm / thickness_mm, sharpness = depth_mm / radius_mm;
    require_within("both grooves over thickness", x, 0.0, 1.0);
    require_within("groove depth over radius", sharpness, 0.25, 50.0);
    const auto& rows = sharpness <= kSharpGrooveFrom ? kBluntGroove : kSharpGroove;
    return std::max(1.0, notch_polynomial(rows, sharpness, x));
}

double one_sided_groove_factor(double thickness_mm, double depth_mm, double radius_mm) {
    require_within("groove depth over thickness", depth_mm / thickness_mm, 0.02, 0.2);
    require_within("groove radius over thickness", radius_mm / thickness_mm, 0.02, 0.3);
    require_within("groove depth over radius", depth_mm / radius_mm, 0.25, 5.0);
    const double net = kOneSidedGroove * (thickness_mm - depth_mm);
    return groove_factor(net + 2.0 * depth_mm, depth_mm, radius_mm);
}

}  // namespace backspring

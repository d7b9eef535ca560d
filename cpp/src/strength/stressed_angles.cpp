#include "stressed_angles.hpp"

#include <algorithm>

#include "backspring/core/root.hpp"

namespace backspring {
namespace {

// Steps of five degrees miss far less of a peak than this share of it.
constexpr double kNear = 0.9;
// To a thousandth of the span: what is left of the angle counts by its square.
constexpr int kStressBits = 16;

/// The greatest stress near a step that its neighbours do not pass.
StressedAngle refined(const Action& action, std::span<const Step> steps, std::size_t i) {
    const auto at = [&](double angle) {
        return peak_stress(action, contact_at(action.joint, angle)).stress_mpa;
    };
    const double low = angle_of(steps[i == 0 ? 0 : i - 1]);
    const double high = angle_of(steps[std::min(i + 1, steps.size() - 1)]);
    const double best = find_maximum(at, low, high, kStressBits);
    return {at(best), best, nullptr};
}

}  // namespace

std::vector<StressedAngle> detail::stressed_angles(const Action& action,
                                                   std::span<const Step> steps,
                                                   double stress_mpa) {
    std::vector<StressedAngle> angles, others;
    const auto stress = [&](std::size_t i) { return steps[i].peak.stress_mpa; };
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (stress(i) <= kNear * stress_mpa) continue;
        const bool falls_after = i + 1 == steps.size() || stress(i + 1) < stress(i);
        const bool rose_before = i == 0 || stress(i - 1) <= stress(i);
        if (falls_after && rose_before) angles.push_back(refined(action, steps, i));
        others.push_back({stress(i), angle_of(steps[i]), &steps[i]});
    }
    angles.insert(angles.end(), others.begin(), others.end());
    std::erase_if(angles, [&](const auto& angle) { return angle.stress_mpa <= stress_mpa; });
    return angles;
}

}  // namespace backspring

#include <algorithm>
#include <cmath>

#include "backspring/core/root.hpp"
#include "backspring/strength/plastic_set.hpp"
#include "stressed_angles.hpp"

namespace backspring {
namespace {

// To 1/4000 of the span between two steps: the torque is then off by far less than 1e-6.
constexpr int kTorqueBits = 12;

/// The greatest torque about a step, as far as so many neighbours on each side.
double peak_about(const Action& action,
                  std::span<const Step> steps,
                  std::size_t i,
                  std::size_t neighbours) {
    const auto at = [&](double angle) { return turn_at(action, angle).opening_nmm(); };
    const double low = angle_of(steps[i < neighbours ? 0 : i - neighbours]);
    const double high = angle_of(steps[std::min(i + neighbours, steps.size() - 1)]);
    return std::max(at(find_maximum(at, low, high, kTorqueBits)), at(angle_of(steps[i])));
}

/// Torques after a set without solving contact again: a touch loses the share of its force that the
/// set is of the spring's rise there. Good enough to tell where the peaks are.
std::vector<double> guessed(const Joint& joint,
                            std::span<const Step> steps,
                            const FaceShift& shift) {
    std::vector<double> torques;
    torques.reserve(steps.size());
    for (const Step& step : steps) {
        double left = 0.0;
        for (const Touch& touch : step.turn.contact.all()) {
            const double rise = touch.height_mm - joint.face_mm - joint.face_slope * touch.x_mm;
            left = std::max(left, 1.0 - shift.at_mm(touch.x_mm) / rise);
        }
        torques.push_back(left * step.turn.opening_nmm());
    }
    return torques;
}

double peak_after(const Action& action,
                  std::span<const Step> steps,
                  const std::vector<double>& guess) {
    constexpr double worth_a_look = 0.8;
    constexpr std::size_t neighbours = 2;
    const double top = *std::max_element(guess.begin(), guess.end());
    double greatest = turn_at(action, angle_of(steps.front())).opening_nmm();
    for (std::size_t i = 0; i < guess.size(); ++i) {
        const bool hill = (i == 0 || guess[i] >= guess[i - 1]) &&
                          (i + 1 == guess.size() || guess[i] > guess[i + 1]);
        if (!hill || guess[i] < worth_a_look * top) continue;
        greatest = std::max(greatest, peak_about(action, steps, i, neighbours));
    }
    return greatest;
}

}  // namespace

PeakTorques peak_torques(const Action& action, std::span<const Step> steps, const PlasticSet& set) {
    if (steps.empty()) return {};
    const auto less = [](const Step& a, const Step& b) {
        return a.turn.opening_nmm() < b.turn.opening_nmm();
    };
    const auto top = std::max_element(steps.begin(), steps.end(), less) - steps.begin();
    const double before = peak_about(action, steps, static_cast<std::size_t>(top), 1);
    if (!set.yielded) return {before, before};
    Action after = action;
    after.joint = with_shift(action.joint, set.shift);
    return {before, peak_after(after, steps, guessed(action.joint, steps, set.shift))};
}

}  // namespace backspring

#include "backspring/check/feel.hpp"

#include <algorithm>

namespace backspring {
namespace {

// Small against the flats' and arcs' own angles, large against rounding of the torque.
constexpr double kNearDeg = 0.01;

Friction shifted(Friction friction, double by) {
    if (friction.spring == 0.0 && friction.pivot == 0.0) {
        friction.spring = friction.pivot = kUsualFriction;
    }
    friction.spring = std::clamp(friction.spring + by, 0.0, 1.0);
    friction.pivot = std::clamp(friction.pivot + by, 0.0, 1.0);
    return friction;
}

double rate_nmm_per_deg(const Joint& joint, double low_deg, double high_deg) {
    const auto torque = [&](double deg) { return contact_at(joint, deg).torque_nmm; };
    return (torque(high_deg) - torque(low_deg)) / (high_deg - low_deg);
}

SeatStiffness seats(Solution& solution) {
    const Rests& rests = solution.rests();
    const Joint& joint = solution.joint();
    const auto about = [&](const std::optional<Contact>& rest) -> std::optional<double> {
        if (!rest) return std::nullopt;
        const double at = rest->blade_angle_deg;
        return rate_nmm_per_deg(joint, at - kNearDeg, at + kNearDeg);
    };
    const double open = rests.open.blade_angle_deg;
    return {rate_nmm_per_deg(joint, open - kNearDeg, open), about(rests.half_stop),
            about(rests.closed)};
}

/// Ways without a crest are left out, as in strokes().
std::vector<double> rises(Solution& solution) {
    const Joint& joint = solution.joint();
    const auto at_pivot = [&](const Contact& contact) {
        return deflection_mm(joint, contact, joint.pivot_mm);
    };
    std::vector<double> rises;
    for (LazyStroke& way : solution.ways()) {
        const auto& crest = way.crest();
        if (!crest) continue;
        rises.push_back(at_pivot(crest->contact) - at_pivot(way.from().contact));
    }
    return rises;
}

std::optional<double> evenness(Solution& solution) {
    auto& ways = solution.ways();
    if (ways.size() < 2 || !snaps_everywhere(solution)) return std::nullopt;
    const double first = ways[0].opening_peak().opening_nmm();
    const double second = ways[1].opening_peak().opening_nmm();
    return std::min(first, second) / std::max(first, second);
}

double dial_lift_mm(Solution& solution) {
    const Joint& joint = solution.joint();
    const auto height = [&](const Turn& turn) {
        return deflection_mm(joint, turn.contact, joint.dial_mm);
    };
    const Turn highest = largest(solution.travel(), height);
    return height(highest) - deflection_mm(joint, solution.rests().open, joint.dial_mm);
}

std::optional<double> pull_with(Design design, const Friction& friction) {
    design.friction = friction;
    Solution solution(design);
    return peak_pull_n(solution);
}

}  // namespace

Friction oiled(const Friction& friction) { return shifted(friction, -kFrictionSpread); }

Friction dry(const Friction& friction) { return shifted(friction, kFrictionSpread); }

Feel feel(Solution& solution) {
    const Design& design = solution.design();
    return {.rise_mm = rises(solution),
            .evenness = evenness(solution),
            .seat = seats(solution),
            .dial_lift_mm = dial_lift_mm(solution),
            .pull_oiled_n = pull_with(design, oiled(design.friction)),
            .pull_dry_n = pull_with(design, dry(design.friction))};
}

Feel feel(const Design& design) {
    Solution solution(design);
    return feel(solution);
}

}  // namespace backspring

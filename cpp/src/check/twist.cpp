#include "backspring/check/twist.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/angle.hpp"
#include "backspring/design/joint_of.hpp"
#include "backspring/strength/torsion.hpp"

namespace backspring {
namespace {

/// Where across the width each blade of the joint bears; none for one that is not on the pin.
struct Across {
    std::vector<std::optional<double>> arm_mm;  ///< from the middle, as Part::blade counts
    std::string first, last;                    ///< blades at the two edges
    int count = 0;
};

Across across(const Design& design) {
    Across shares;
    for (const std::size_t place : blades_in_joint(design)) {
        const Blade& blade = design.blades[place];
        const bool on_pin = on_own_pin(design, blade);
        shares.arm_mm.push_back(on_pin ? std::optional(0.5 + shares.count) : std::nullopt);
        if (!on_pin) continue;
        if (shares.count++ == 0) shares.first = blade.name;
        shares.last = blade.name;
    }
    const double width = width_at_mm(design.spring, design.own().tang.pivot_mm);
    for (auto& arm : shares.arm_mm) {
        if (arm) *arm = width * (*arm / shares.count - 0.5);
    }
    return shares;
}

double torque_nmm(const Contact& contact, const Across& shares) {
    double torque = 0.0;
    const auto add = [&](const Touch& touch) {
        const auto& arm = shares.arm_mm[static_cast<std::size_t>(touch.part.blade)];
        torque += touch.force_n * arm.value_or(0.0);
    };
    std::ranges::for_each(contact.all(), add);
    std::ranges::for_each(contact.others.beside, add);
    return torque;
}

}  // namespace

std::optional<Twist> twist(Solution& solution) {
    const Design& design = solution.design();
    const Across shares = across(design);
    if (shares.count < 2) return std::nullopt;
    const auto size = [&](const Turn& turn) { return std::abs(torque_nmm(turn.contact, shares)); };
    const Turn hardest = largest(solution.travel(), size);
    const double torque = torque_nmm(hardest.contact, shares);
    Twist worst{.side = shares.first, .beside = {}};
    worst.blade_angle_deg = angle_of(&hardest);
    const double angle =
        std::abs(torque) * twist_rad_per_nmm(design.spring, design.own().tang.pivot_mm);
    worst.torque_nmm = std::abs(torque);
    worst.angle_deg = degrees(angle);
    worst.across_mm = width_at_mm(design.spring, design.own().tang.pivot_mm) * std::tan(angle);
    if (torque > 0.0) worst.side = shares.last;
    return worst;
}

}  // namespace backspring

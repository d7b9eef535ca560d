#include <algorithm>
#include <cmath>

#include "rules.hpp"

namespace backspring {
namespace {

constexpr RuleText kSoundSteelLeft{
    "sound_steel_left",
    "must leave sound steel under both faces where the spring is {0} thick, got {1}"};
constexpr RuleText kWithinYield{"within_yield",
                                "must be no greater than the yield stress {0} either way, got {1}"};

void skin_rule(Requirements& rules, const Design& design) {
    const Profile& profile = design.spring.thickness;
    if (!rules.sound("spring.soft_skin") || !rules.sound("spring.thickness") || profile.empty()) {
        return;
    }
    const double thinnest =
        std::ranges::min_element(profile, {}, &Station::thickness_mm)->thickness_mm;
    const double depth = design.surface.soft_skin_mm;
    rules.require(2.0 * depth < thinnest, "spring.soft_skin", kSoundSteelLeft, Quantity::length,
                  {thinnest}, {depth});
}

}  // namespace

void detail::surface_rules(Requirements& rules, const Design& design) {
    skin_rule(rules, design);
    if (!rules.sound("spring.yield")) return;
    const double yield = design.strength.yield_mpa.value;
    const auto within = [&](std::string_view key, double stress) {
        if (!rules.sound(key)) return;
        rules.require(std::abs(stress) <= yield, key, kWithinYield, Quantity::stress, {yield},
                      {stress});
    };
    within("spring.residual_stress", design.surface.residual_mpa);
    within("spring.hole_residual_stress", design.surface.hole_residual_mpa);
}

}  // namespace backspring

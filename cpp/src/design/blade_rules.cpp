#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "backspring/tang/outline.hpp"
#include "rules.hpp"

namespace backspring {
namespace {

constexpr std::size_t kMostAtOneEnd = 4;
constexpr RuleText kTipClear{"tip_clear_of_tang",
                             "strikes the tang of the blade at the other end: closed, its tip "
                             "reaches {1} from the pivot, and there is room for {0}"};
constexpr RuleText kPadsApart{"pads_apart",
                              "must not overlap the pad of another blade on a pivot of its own, "
                              "from {0} to {1}"};

std::string key_of(const Blade& blade, std::string_view key) {
    return "blades." + blade.name + "." + std::string(key);
}

void name_rules(Requirements& rules, const Design& design) {
    for (std::size_t i = 0; i < design.blades.size(); ++i) {
        const Blade& blade = design.blades[i];
        const std::string key = i == 0 ? "blade.name" : key_of(blade, "name");
        const auto plain = [](unsigned char c) { return std::isalnum(c) || c == '-' || c == '_'; };
        rules.require(!blade.name.empty() && std::ranges::all_of(blade.name, plain), key, [&] {
            return "must be of letters, digits, - and _, got \"" + blade.name + "\"";
        });
        const auto same = [&](const Blade& other) { return other.name == blade.name; };
        rules.require(std::ranges::count_if(design.blades, same) == 1 || i == 0, key, [&] {
            return "must differ from every other blade's name, got \"" + blade.name + "\"";
        });
    }
}

/// Two tangs side by side on one pin share the width; on pivots of their own each needs its pad.
void pad_rules(Requirements& rules, const Design& design, std::size_t i) {
    const Blade& blade = design.blades[i];
    for (std::size_t j = 0; j < i; ++j) {
        const Blade& other = design.blades[j];
        if (other.end != blade.end || other.tang.pivot_mm == blade.tang.pivot_mm) continue;
        const bool apart =
            blade.pad.end_mm <= other.pad.start_mm || other.pad.end_mm <= blade.pad.start_mm;
        rules.require(apart, key_of(blade, "pad"), kPadsApart, Quantity::length,
                      {other.pad.start_mm, other.pad.end_mm},
                      {blade.pad.start_mm, blade.pad.end_mm});
    }
}

/// A blade that closes over the spring must end before the tang at the other end, however that
/// blade stands.
void tip_rules(Requirements& rules, const Design& design, std::size_t i) {
    const Blade& blade = design.blades[i];
    if (!blade.blade.length_mm && !blade.blade.tip) return;
    const double tip = blade.blade.tip ? std::hypot(blade.blade.tip->u_mm, blade.blade.tip->w_mm)
                                       : *blade.blade.length_mm - rear_reach_mm(blade.tang);
    const bool pinned = design.spring.support.kind == SupportKind::two_pins;
    const double span = pinned ? design.spring.support.rear_pin_mm : 0.0;
    for (const Blade& other : design.blades) {
        if (other.end == blade.end) continue;
        const double pivots = blade.tang.pivot_mm + span + other.tang.pivot_mm;
        const double room = pivots - swept_radius_mm(make_outline(other.tang, 0.0));
        const char* key = blade.blade.tip ? "blade.tip" : "blade.length";
        rules.require(tip < room, i == 0 ? key : key_of(blade, key), kTipClear, Quantity::length,
                      {room}, {tip});
    }
}

void end_rules(Requirements& rules, const Design& design) {
    for (const End end : {End::front, End::rear}) {
        const auto here = [&](const Blade& blade) { return blade.end == end; };
        const auto count = std::ranges::count_if(design.blades, here);
        rules.require(static_cast<std::size_t>(count) <= kMostAtOneEnd, "blades", [&] {
            return "must be at most " + std::to_string(kMostAtOneEnd) +
                   " at one end of the spring, got " + std::to_string(count);
        });
    }
    const auto behind = [&](const Blade& blade) { return blade.end != design.own().end; };
    const bool both = std::ranges::any_of(design.blades, behind);
    const bool root = design.spring.support.kind == SupportKind::root_stiffness;
    rules.require(!both || !root, "spring.support", [] {
        return std::string("must be by two pins or by a middle pin alone with a blade at each end");
    });
}

}  // namespace

void detail::blade_rules(Requirements& rules, const Design& design) {
    if (design.blades.size() == 1) return;
    name_rules(rules, design);
    end_rules(rules, design);
    for (std::size_t i = 0; i < design.blades.size(); ++i) {
        pad_rules(rules, design, i);
        if (rules.sound("spring") && rules.sound("tang")) tip_rules(rules, design, i);
    }
}

std::string detail::key_of_blade(const std::string& key, const Blade& blade) {
    if (key == "spring.pad") return key_of(blade, "pad");
    for (const std::string_view table : {"tang.", "fit.", "blade."}) {
        if (key.starts_with(table)) return key_of(blade, key);
    }
    return "";
}

}  // namespace backspring

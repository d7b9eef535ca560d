#include <algorithm>
#include <cmath>

#include "backspring/design/field.hpp"
#include "backspring/design/joint_of.hpp"
#include "rules.hpp"

namespace backspring {
namespace {

constexpr RuleText kHoldsPins{"liner_holds_pins",
                              "must be more than {0}, so that the liners hold all pins, got {1}"};

/// Values that only make sense together.
void together(
    Requirements& rules, std::string_view missing, bool needed, bool given, const char* why) {
    rules.require(!needed || given, missing, [&] { return std::string(why); });
}

void liner_rules(Requirements& rules, const Design& design) {
    const Frame& frame = design.frame;
    const bool thick = frame.liner_thickness_mm.has_value(),
               high = frame.liner_height_mm.has_value();
    together(rules, "frame.liner_height", thick, high,
             "must be given with the thickness of the liners");
    together(rules, "frame.liner_thickness", high, thick,
             "must be given with the height of the liners");
    together(rules, "frame.liner_thickness", frame.liner_modulus_mpa.has_value(), thick || high,
             "must be given with the modulus of the liners");
    if (!thick || !high || !rules.sound("frame") || !rules.sound("spring") ||
        !rules.sound("tang") || !rules.sound("pins") || !rules.sound("friction")) {
        return;
    }
    const auto placed = [](const Blade& blade) {
        return std::isfinite(blade.tang.pivot_mm) && std::isfinite(blade.tang.open_mm);
    };
    if (design.spring.support.kind != SupportKind::two_pins) return;
    if (!std::ranges::all_of(design.blades, placed)) return;
    const double needed = least_liner_height_mm(design);
    rules.require(*frame.liner_height_mm > needed, "frame.liner_height", kHoldsPins,
                  Quantity::length, {needed}, {*frame.liner_height_mm});
}

void scale_rules(Requirements& rules, const Frame& frame) {
    const bool thick = frame.scale_thickness_mm.has_value(),
               stiff = frame.scale_modulus_mpa.has_value();
    const bool liners = frame.liner_thickness_mm.has_value() || frame.liner_height_mm.has_value();
    together(rules, "frame.scale_modulus", thick, stiff,
             "must be given with the thickness of the scales");
    together(rules, "frame.scale_thickness", stiff, thick,
             "must be given with the modulus of the scales");
    together(rules, "frame.liner_thickness", (thick || stiff) && !frame.seat_mm_per_n, liners,
             "must be given with scales, for the pins sit in the liners");
}

}  // namespace

void detail::frame_rules(Requirements& rules, const Design& design) {
    const Frame& frame = design.frame;
    liner_rules(rules, design);
    scale_rules(rules, frame);
    if (!frame.seat_mm_per_n) return;
    const bool liners = frame.liner_height_mm.has_value() || frame.liner_modulus_mpa ||
                        frame.scale_thickness_mm.has_value() || frame.scale_modulus_mpa.has_value();
    rules.require(!liners, "frame.seat", [] {
        return std::string("give either a measured seat or liners with their height, not both");
    });
    const bool both_ends = std::ranges::any_of(
        design.blades, [&](const Blade& blade) { return blade.end != design.own().end; });
    rules.require(!both_ends, "frame.seat", [] {
        return std::string(
            "one number does not say what the pins do with a blade at each end: give the liners");
    });
}

}  // namespace backspring

#include "rules.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "backspring/tang/outline.hpp"

namespace backspring {
namespace {

/// Turning, the tang must stay clear of the pin that the spring turns on.
void clearance_rules(Requirements& rules, const Design& design) {
    const Spring& spring = design.spring;
    const Tang& tang = design.tang;
    double pin_radius = 0.0, offset = 0.0;
    for (const Hole& hole : spring.holes) {
        if (hole.center_mm != 0.0) continue;
        pin_radius = 0.5 * hole.diameter_mm;
        offset = hole.offset_mm;
    }
    const double pin_height = tang.open_mm + 0.5 * thickness_mm(spring.thickness, 0.0) + offset;
    const double room = std::hypot(tang.pivot_mm, pin_height) - pin_radius;
    const double swept = swept_radius_mm(make_outline(tang, tang.pivot_mm));
    rules.require(swept < room, "tang.pivot", [&] {
        return "the tang turns through the middle pin: it sweeps " + with_unit(swept, "mm") +
               " about the pivot, the pin is " + with_unit(room, "mm") + " away";
    });
}

void fit_rules(Requirements& rules, const Fit& fit, const Spring& spring, bool spring_good) {
    rules.in_range("fit.preload", fit.preload_mm, 0.0, kThickestMm, "mm");
    if (!rules.positive("fit.dial", fit.dial_mm, kLongestMm, "mm") || !spring_good) return;
    const double end = std::max(spring.thickness.back().x_mm, spring.pad.end_mm);
    rules.require(fit.dial_mm <= end, "fit.dial", [&] {
        return "must lie on the spring, which ends at " + with_unit(end, "mm") + ", got " +
               with_unit(fit.dial_mm, "mm");
    });
}

void optional_positive(Requirements& rules,
                       std::string_view key,
                       const std::optional<double>& value,
                       double high,
                       std::string_view unit) {
    if (value) rules.positive(key, *value, high, unit);
}

void blade_rules(Requirements& rules, const Blade& blade) {
    optional_positive(rules, "blade.nail_nick", blade.nail_nick_mm, kLongestMm, "mm");
    optional_positive(rules, "blade.inertia", blade.inertia_kg_mm2, 1e6, "kg mm2");
    optional_positive(rules, "blade.mass", blade.mass_g, 1e4, "g");
    optional_positive(rules, "blade.length", blade.length_mm, kLongestMm, "mm");
    optional_positive(rules, "blade.height", blade.height_mm, kLongestMm, "mm");
    optional_positive(rules, "blade.edge_clearance", blade.edge_clearance_mm, kLongestMm, "mm");
}

void friction_rules(Requirements& rules, const Friction& friction) {
    rules.in_range("friction.spring", friction.spring, 0.0, 1.0, "");
    rules.in_range("friction.pivot", friction.pivot, 0.0, 1.0, "");
    rules.in_range("friction.pivot_pin", friction.pivot_pin_mm, 0.0, kThickestMm, "mm");
}

void target_rules(Requirements& rules, const Targets& targets) {
    optional_positive(rules, "targets.pull", targets.pull_low_n, 1e4, "N");
    optional_positive(rules, "targets.pull", targets.pull_high_n, 1e4, "N");
    if (targets.pull_low_n && targets.pull_high_n) {
        rules.require(*targets.pull_low_n <= *targets.pull_high_n, "targets.pull", [&] {
            return "must rise from least to greatest, got " + with_unit(*targets.pull_low_n, "N") +
                   " to " + with_unit(*targets.pull_high_n, "N");
        });
    }
    optional_positive(rules, "targets.yield_margin", targets.yield_margin, 100.0, "");
    optional_positive(rules, "targets.reading", targets.reading_mm, kThickestMm, "mm");
    optional_positive(rules, "targets.openings", targets.openings, 1e9, "");
}

void wear_rules(Requirements& rules, const Design& design) {
    // The least and greatest of the table that turns Rockwell C into Vickers.
    constexpr double softest = 20.0, hardest = 68.0;
    optional_positive(rules, "spring.kink_radius", design.surface.kink_radius_mm, kLongestMm, "mm");
    optional_positive(rules, "spring.curve_radius", design.surface.curve_radius_mm, kLongestMm,
                      "mm");
    const Pins& pins = design.pins;
    optional_positive(rules, "pins.middle", pins.middle_mm, kThickestMm, "mm");
    optional_positive(rules, "pins.rear", pins.rear_mm, kThickestMm, "mm");
    optional_positive(rules, "pins.liner", pins.liner_mm, kThickestMm, "mm");
    rules.positive("pins.yield", pins.yield_mpa, 1e4, "MPa");
    if (const auto& hardness = design.hardness.tang_hrc) {
        rules.in_range("blade.hardness", *hardness, softest, hardest, "HRC");
    }
}

}  // namespace

std::vector<Fault> faults(const Design& design) {
    Requirements rules;
    spring_rules(rules, design.spring, design.strength);
    const bool spring_good = rules.faults().empty();
    const bool tang_good = tang_rules(rules, design.tang, design.spring.pad);
    if (spring_good && tang_good) clearance_rules(rules, design);
    fit_rules(rules, design.fit, design.spring, spring_good);
    blade_rules(rules, design.blade);
    friction_rules(rules, design.friction);
    target_rules(rules, design.targets);
    wear_rules(rules, design);
    return rules.faults();
}

}  // namespace backspring

#pragma once

#include "designs.hpp"

// Designs with several blades on one spring. All patterns are invented.
namespace designs {

/// A small second blade with a round end.
inline backspring::Blade pen(backspring::End end) {
    backspring::Blade blade;
    blade.name = "pen";
    blade.end = end;
    blade.pad = {23.0, 33.0};
    blade.tang = wren().own().tang;
    blade.tang.pivot_mm = 28.0;
    blade.fit = {.preload_mm = 0.6, .dial_mm = 29.0};
    return blade;
}

/// Heron's front half on both sides of its pins, a blade at each end.
inline Design bunting(SupportKind kind) {
    Design design = heron();
    const bool pinned = kind == SupportKind::two_pins;
    const double span = pinned ? 18.0 : 0.0;
    design.spring.support = {.kind = kind, .rear_pin_mm = span, .root_stiffness_nmm_per_rad = 0.0};
    design.spring.thickness = {
        {-span - 33.0, 2.2}, {-span - 20.0, 2.3}, {-span, pinned ? 3.4 : 3.8},
        {0.0, 3.8},          {7.0, 3.1},          {36.5, 2.5}};
    design.spring.holes = {{0.0, 2.0, 0.0, backspring::HoleFor::middle_pin}};
    if (pinned) design.spring.holes.push_back({-span, 2.0, 0.0, backspring::HoleFor::rear_pin});
    design.blades.push_back(pen(backspring::End::rear));
    return design;
}

/// Two blades side by side on one pin of a wide spring; the second stands higher when closed.
inline Design whinchat() {
    Design design = heron();
    design.spring.width_mm = 4.6;
    backspring::Blade sheep = design.own();
    sheep.name = "sheep";
    sheep.tang.half_stop_mm = 4.58;
    sheep.tang.closed_mm = 4.66;
    sheep.tang.corner_closed_mm = 1.1;
    design.blades.push_back(sheep);
    return design;
}

/// Two on one pin and one at the other end.
inline Design redstart() {
    Design design = bunting(SupportKind::two_pins);
    design.spring.width_mm = 4.6;
    backspring::Blade sheep = design.own();
    sheep.name = "sheep";
    sheep.tang.closed_mm = 4.65;
    sheep.tang.kick = Kick{.distance_mm = 4.0, .height_mm = 0.1, .radius_mm = 0.5};
    design.blades.insert(design.blades.begin() + 1, sheep);
    return design;
}

}  // namespace designs

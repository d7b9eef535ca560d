#include "backspring/spring/spring.hpp"

#include <algorithm>
#include <utility>

namespace backspring {
namespace {

/// What a hole is for once the spring is seen from its other end.
HoleFor other_end(HoleFor pin) {
    if (pin == HoleFor::neither) return pin;
    return pin == HoleFor::middle_pin ? HoleFor::rear_pin : HoleFor::middle_pin;
}

}  // namespace

Spring turned_round(const Spring& spring) {
    const bool pinned = spring.support.kind == SupportKind::two_pins;
    const double origin = pinned ? -spring.support.rear_pin_mm : 0.0;
    Spring turned = spring;
    std::reverse(turned.thickness.begin(), turned.thickness.end());
    for (Station& station : turned.thickness) station.x_mm = origin - station.x_mm;
    std::reverse(turned.holes.begin(), turned.holes.end());
    for (Hole& hole : turned.holes) {
        hole.center_mm = origin - hole.center_mm;
        if (pinned) hole.pin = other_end(hole.pin);
    }
    if (pinned) std::swap(turned.pin_clearance.middle_mm, turned.pin_clearance.rear_mm);
    return turned;
}

double last_change_mm(const Spring& spring) {
    double last = std::max(spring.thickness.back().x_mm, 0.0);
    for (const Hole& hole : spring.holes) {
        last = std::max(last, hole.center_mm + 0.5 * hole.diameter_mm);
    }
    return last;
}

Section section_at(const Spring& spring, double x_mm) {
    const double thickness = thickness_mm(spring.thickness, x_mm);
    for (const Hole& hole : spring.holes) {
        const double chord = chord_mm(hole, x_mm);
        if (chord > 0.0) {
            return make_section(spring.width_mm, thickness, chord, hole.offset_mm);
        }
    }
    return make_section(spring.width_mm, thickness);
}

}  // namespace backspring

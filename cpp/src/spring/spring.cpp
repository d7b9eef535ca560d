#include "backspring/spring/spring.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace backspring {
namespace {

/// What a hole is for once the spring is seen from its other end.
HoleFor other_end(HoleFor pin) {
    if (pin == HoleFor::neither) return pin;
    return pin == HoleFor::middle_pin ? HoleFor::rear_pin : HoleFor::middle_pin;
}

template <class Rows>
void turn_round(Rows& rows, double origin_mm) {
    std::reverse(rows.begin(), rows.end());
    for (auto& row : rows) row.x_mm = origin_mm - row.x_mm;
}

}  // namespace

Spring turned_round(const Spring& spring) {
    const bool pinned = spring.support.kind == SupportKind::two_pins;
    const double origin = pinned ? -spring.support.rear_pin_mm : 0.0;
    Spring turned = spring;
    turn_round(turned.thickness, origin);
    turn_round(turned.widths, origin);
    turn_round(turned.mid_line, origin);
    if (!turned.widths.empty()) turned.width_mm = width_at_mm(turned, 0.0);
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
    if (!spring.widths.empty()) last = std::max(last, spring.widths.back().x_mm);
    if (!spring.mid_line.empty()) last = std::max(last, spring.mid_line.back().x_mm);
    for (const Hole& hole : spring.holes) {
        last = std::max(last, hole.center_mm + 0.5 * hole.diameter_mm);
    }
    return last;
}

double width_at_mm(const Spring& spring, double x_mm) {
    return spring.widths.empty() ? spring.width_mm : width_mm(spring.widths, x_mm);
}

Spring with_width(Spring spring, double width_mm) {
    const double share = width_mm / spring.width_mm;
    for (WidthStation& station : spring.widths) station.width_mm *= share;
    spring.width_mm = width_mm;
    return spring;
}

double mid_line_mm(const Spring& spring, const Pad& pad, double x_mm) {
    if (spring.mid_line.empty()) return 0.5 * thickness_mm(spring.thickness, x_mm);
    const double middle_mm = 0.5 * (pad.start_mm + pad.end_mm);
    const double at_pad = 0.5 * thickness_mm(spring.thickness, middle_mm);
    return at_pad + height_mm(spring.mid_line, x_mm) - height_mm(spring.mid_line, middle_mm);
}

double belly_mm(const Spring& spring, const Pad& pad, double x_mm) {
    if (spring.mid_line.empty()) return 0.0;
    return mid_line_mm(spring, pad, x_mm) - 0.5 * thickness_mm(spring.thickness, x_mm);
}

double lean_cosine(const Spring& spring, double x_mm) {
    const double lean = slope(spring.mid_line, x_mm);
    return lean == 0.0 ? 1.0 : 1.0 / std::hypot(1.0, lean);
}

Section section_at(const Spring& spring, double x_mm) {
    const double thickness = thickness_mm(spring.thickness, x_mm) * lean_cosine(spring, x_mm);
    const double width = width_at_mm(spring, x_mm);
    for (const Hole& hole : spring.holes) {
        const double chord = chord_mm(hole, x_mm);
        if (chord > 0.0) return make_section(width, thickness, chord, hole.offset_mm);
    }
    return make_section(width, thickness);
}

}  // namespace backspring

#include <algorithm>

#include "backspring/design/joint_of.hpp"
#include "frame_pins.hpp"

namespace backspring {
namespace {

/// A pin of the spring in liners whose back edge is flush with its back.
PinSeat spring_pin(const Design& design, HoleFor pin, double x_mm) {
    const Hole* hole = hole_for(pin, design.spring.holes);
    const auto& stated = pin == HoleFor::middle_pin ? design.pins.middle_mm : design.pins.rear_mm;
    return {.x_mm = x_mm,
            .diameter_mm = stated.value_or(hole ? hole->diameter_mm : 0.0),
            .depth_mm =
                0.5 * thickness_mm(design.spring.thickness, x_mm) - (hole ? hole->offset_mm : 0.0)};
}

/// The pivot farthest from the middle pin of the blades at one end, the deepest of those.
std::optional<PinSeat> pivot_at(const Design& design, bool own_end, double pin_mm) {
    std::optional<PinSeat> farthest;
    for (const Blade& blade : design.blades) {
        if ((blade.end == design.own().end) != own_end) continue;
        const double x = own_end ? blade.tang.pivot_mm : pin_mm - blade.tang.pivot_mm;
        const PinSeat seat{
            .x_mm = x,
            .diameter_mm = design.friction.pivot_pin_mm,
            .depth_mm = blade.tang.open_mm + thickness_mm(design.spring.thickness, x)};
        const bool farther = !farthest || std::abs(x) > std::abs(farthest->x_mm);
        const bool deeper = farthest && x == farthest->x_mm && seat.depth_mm > farthest->depth_mm;
        if (farther || deeper) farthest = seat;
    }
    return farthest;
}

}  // namespace

FramePins detail::frame_pins(const Design& design) {
    const double rear = -design.spring.support.rear_pin_mm;
    return {.middle = spring_pin(design, HoleFor::middle_pin, 0.0),
            .rear = spring_pin(design, HoleFor::rear_pin, rear),
            .pivot = *pivot_at(design, true, 0.0),
            .far_pivot = pivot_at(design, false, rear)};
}

std::optional<JointFrame> frame_of(const Design& design) {
    if (!design.frame.stated()) return std::nullopt;
    if (design.spring.support.kind != SupportKind::two_pins) return std::nullopt;
    return JointFrame{.give = make_frame_give(design.frame, frame_pins(design)),
                      .span_mm = design.spring.support.rear_pin_mm};
}

double least_liner_height_mm(const Design& design) {
    const FramePins pins = frame_pins(design);
    double needed = 0.0;
    for (const PinSeat& pin :
         {pins.middle, pins.rear, pins.pivot, pins.far_pivot.value_or(PinSeat{})}) {
        needed = std::max({needed, pin.depth_mm + 0.5 * pin.diameter_mm, 1.5 * pin.diameter_mm});
    }
    return needed;
}

}  // namespace backspring

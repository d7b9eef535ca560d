#include "backspring/design/steel_ends.hpp"

#include <algorithm>

namespace backspring {
namespace {

double rear_pin_mm(const Spring& spring) {
    const bool pinned = spring.support.kind == SupportKind::two_pins;
    return pinned ? -spring.support.rear_pin_mm : 0.0;
}

}  // namespace

SteelEnds steel_ends(const Design& design) {
    const double rear_pin = rear_pin_mm(design.spring);
    SteelEnds ends{.rear_mm = rear_pin, .front_mm = design.own().pad.end_mm};
    for (const Blade& blade : design.blades) {
        const bool here = blade.end == design.own().end;
        if (here) ends.front_mm = std::max(ends.front_mm, blade.pad.end_mm);
        if (!here) ends.rear_mm = std::min(ends.rear_mm, rear_pin - blade.pad.end_mm);
    }
    if (design.spring.thickness.size() < 2) return ends;
    for (const Station& s : design.spring.thickness) {
        ends.rear_mm = std::min(ends.rear_mm, s.x_mm);
        ends.front_mm = std::max(ends.front_mm, s.x_mm);
    }
    return ends;
}

SteelEnds belly_ends(const Design& design) {
    SteelEnds belly{.rear_mm = steel_ends(design).rear_mm, .front_mm = design.own().pad.start_mm};
    for (const Blade& blade : design.blades) {
        if (blade.end == design.own().end) {
            belly.front_mm = std::min(belly.front_mm, blade.pad.start_mm);
        } else {
            const double pad = rear_pin_mm(design.spring) - blade.pad.start_mm;
            belly.rear_mm = std::max(belly.rear_mm, pad);
        }
    }
    return belly;
}

}  // namespace backspring

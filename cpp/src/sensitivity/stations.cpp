#include "stations.hpp"

#include "backspring/design/steel_ends.hpp"

namespace backspring {

Stations detail::make_stations(const Design& design, GrindFace face, double spacing_mm) {
    const Spring& spring = design.spring;
    const auto at_rear = [&](const Blade& blade) { return blade.end != design.own().end; };
    const bool back = face == GrindFace::back;
    const SteelEnds belly = belly_ends(design);
    double rear = spring.support.kind == SupportKind::two_pins ? -spring.support.rear_pin_mm : 0.0;
    if (std::ranges::any_of(design.blades, at_rear)) {
        rear = back ? steel_ends(design).rear_mm : belly.rear_mm;
    }
    return {rear, back ? design.own().pad.end_mm : belly.front_mm, spacing_mm};
}

}  // namespace backspring

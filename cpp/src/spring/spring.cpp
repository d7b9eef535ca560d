#include "backspring/spring/spring.hpp"

namespace backspring {

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

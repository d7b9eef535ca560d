#include "backspring/design/design.hpp"

#include <algorithm>
#include <utility>

namespace backspring {

Design seen_from(const Design& design, std::size_t blade) {
    Design seen = design;
    const auto first = seen.blades.begin(), chosen = first + static_cast<std::ptrdiff_t>(blade);
    std::rotate(first, chosen, chosen + 1);
    if (seen.own().end == design.own().end) return seen;
    seen.spring = turned_round(design.spring);
    if (design.spring.support.kind == SupportKind::two_pins) {
        std::swap(seen.pins.middle_mm, seen.pins.rear_mm);
    }
    for (Blade& each : seen.blades) each.end = each.end == End::front ? End::rear : End::front;
    return seen;
}

}  // namespace backspring

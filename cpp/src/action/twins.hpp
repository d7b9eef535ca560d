#pragma once

#include <cmath>

#include "backspring/action/contact.hpp"

namespace backspring::detail {

/// Whether two flats run along each other in one line.
///
/// Of two blades on one pivot that bear so, one that is free to seat stands right there, where its
/// torque jumps, and whoever turns the other takes it along: the spring hands its torque on.
[[nodiscard]] inline bool in_one_line(const Touch& a, const Touch& b) {
    constexpr double alike = 1e-9, same_mm = 1e-8;
    if (!a.part.flat || !b.part.flat || std::abs(a.slope - b.slope) > alike) return false;
    return std::abs(b.height_mm + b.slope * (a.x_mm - b.x_mm) - a.height_mm) < same_mm;
}

/// Where the blade that is taken along bears; nothing where none is.
template <class Some>  // a contact, or one that does not change
[[nodiscard]] auto touch_taken_along(Some& contact) -> decltype(contact.others.beside.data()) {
    for (auto& touch : contact.others.beside) {
        if (contact.others.taken_along != 0 && touch.part.blade == contact.others.taken_along)
            return &touch;
    }
    return nullptr;
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

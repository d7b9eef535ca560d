#pragma once

#include "backspring/action/contact.hpp"

namespace backspring::detail {

/// An edge of the pad that a touch is at.
enum class PadEdge { none, start, end };

[[nodiscard]] inline PadEdge pad_edge(const Touch& touch, const Pad& pad) {
    if (touch.x_mm == pad.start_mm) return PadEdge::start;
    return touch.x_mm == pad.end_mm ? PadEdge::end : PadEdge::none;
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include "backspring/design/design.hpp"

namespace backspring::detail {

/// Where a design's pins sit in its liners; with two pins.
[[nodiscard]] FramePins frame_pins(const Design& design);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include <optional>
#include <vector>

#include "backspring/action/contact.hpp"

namespace backspring::detail {

/// What holds a touch in its place along the spring.
enum class Hold { slopes_agree, pad_start, pad_end };

/// The part of the tang that bears in a touch.
struct Bearer {
    int arc = 0;                       ///< in the outline's body, its size for the kick
    std::optional<double> normal_rad;  ///< of the flat beside the arc; none on the arc itself
    Hold hold = Hold::slopes_agree;    ///< what holds the place
};

/// The part of the tang that a touch lies on, as the gradient needs it.
[[nodiscard]] Bearer bearer_of(const Joint& joint, const Touch& touch);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

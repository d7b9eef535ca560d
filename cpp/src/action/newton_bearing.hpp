#pragma once

#include <optional>

#include "indenters.hpp"

namespace backspring::detail {

/// Where an indenter bears on a spring with no other force on it, on the pad or off it, by Newton's
/// method from about where it does, or else from where its outline is level.
///
/// The last step's error goes with its square: where what is left is slight enough to be rounding
/// after one more, that step is taken without another look at the spring.
///
/// @returns  nothing where a closer search is needed: at a step, a hole or the end of a part, where
///           the width varies, a stop presses or the outline does not reach the face
[[nodiscard]] std::optional<Touch> newton_bearing(const Flexibility& flexibility,
                                                  const Indenter& indenter,
                                                  const PlaceGuess* guess);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include <optional>

#include "indenters.hpp"

namespace backspring::detail {

/// A blade alone that leans on its stop with one touch.
struct Leaning {
    Touch touch;    ///< of its body
    double stop_n;  ///< what the tang's torque asks of the stop [N]
};

/// @param body   of the blade where it stands
/// @param plain  how it touches there without a stop
/// @returns      nothing where it does not bear
[[nodiscard]] std::optional<Leaning> leaning_touch(const Joint& joint,
                                                   const Indenter& body,
                                                   const Touch& plain,
                                                   double lever_mm);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

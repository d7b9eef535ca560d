#pragma once

#include <cstddef>

#include "backspring/action/joint.hpp"

namespace backspring::detail {

/// How closely turns are looked at.
struct Fineness {
    double cut_deg;
    double torque_doubt;  ///< torque between turns lacks so much of the largest at most, on average
    double look_deg;      ///< no part of a piece is longer
    std::size_t parts;    ///< of a piece at most
    int halvings;
};

inline constexpr Fineness kAlone{
    .cut_deg = 1e-10, .torque_doubt = 1e-8, .look_deg = 90.0, .parts = 32, .halvings = 5};
// Others seat anew at every look, to 1e-11 deg, and a look costs several times as much.
inline constexpr Fineness kWithOthers{
    .cut_deg = 1e-8, .torque_doubt = 1e-5, .look_deg = 24.0, .parts = 16, .halvings = 3};

[[nodiscard]] inline const Fineness& fineness(const Joint& joint) {
    return joint.alone() ? kAlone : kWithOthers;
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

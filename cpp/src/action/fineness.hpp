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
// With others that seat anew a contact costs several times as much.
inline constexpr Fineness kBothEnds{
    .cut_deg = 1e-5, .torque_doubt = 1e-3, .look_deg = 12.0, .parts = 8, .halvings = 2};
// What comes to bear beside begins with no force, so where it does matters with the square of this;
// and two flats that lie alike may take turns over less.
inline constexpr Fineness kBeside{
    .cut_deg = 1e-4, .torque_doubt = 1e-3, .look_deg = 12.0, .parts = 8, .halvings = 2};

[[nodiscard]] inline const Fineness& fineness(const Joint& joint) {
    return joint.alone() ? kAlone : joint.beside.empty() ? kBothEnds : kBeside;
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

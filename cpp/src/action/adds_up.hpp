#pragma once

#include <span>

#include "backspring/action/contact.hpp"
#include "chebyshev.hpp"

namespace backspring::detail {

/// Whether torque adds up to the energy in every part of a piece: torque = dU/dtheta.
///
/// @param contacts      at Chebyshev's places
/// @param torque_doubt  of the largest torque, so much may be missed on average
/// @param most_nmm      torque of all that is known besides
/// @param way_deg       of which the piece is a part
[[nodiscard]] bool adds_up(std::span<const Contact* const> contacts,
                           double torque_doubt,
                           double most_nmm,
                           double way_deg);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

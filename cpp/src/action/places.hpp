#pragma once

#include <vector>

#include "indenters.hpp"

namespace backspring::detail {

/// Moves all places at once, by Newton's method, until outlines and bent face run along each other.
///
/// Each stays on its arc, its flat or its edge of the pad.
///
/// @returns  false, and nothing moved, where that leads off a part or a force would pull
bool move_together(const Flexibility& flexibility, std::vector<Borne>& borne);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

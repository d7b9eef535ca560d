#pragma once

#include <algorithm>
#include <cstddef>

#include "backspring/action/turns.hpp"
#include "place_curve.hpp"

namespace backspring::detail {

/// Places of a piece about one of it, as many as tell a smooth curve.
struct Window {
    std::size_t first, last;
};

[[nodiscard]] inline Window nearest(const Piece& piece, std::size_t i, std::size_t most = 7) {
    const std::size_t last = piece.size() - 1, behind = std::min(i, most / 2);
    const std::size_t end = std::min(i - behind + most - 1, last);
    return {end - std::min(end, most - 1), end};
}

/// How the touch goes there: about, for where it bears is found from there.
[[nodiscard]] inline PlaceCurve way_about(const Action& action, const Piece& piece, std::size_t i) {
    const Window near = nearest(piece, i, 5);
    PlaceCurve way(action.joint);
    for (std::size_t k = near.first; k <= near.last; ++k) way.add(piece[k]->contact);
    return way;
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

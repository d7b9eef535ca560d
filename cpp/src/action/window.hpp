#pragma once

#include <algorithm>
#include <cstddef>

#include "backspring/action/turns.hpp"
#include "place_curve.hpp"

namespace backspring::detail {

/// Places of a piece about a gap or a place of it, as many as tell a smooth curve.
struct Window {
    std::size_t first, last;
};

[[nodiscard]] inline Window about(const Piece& piece,
                                  std::size_t i,
                                  std::size_t behind,
                                  std::size_t ahead) {
    return {i > behind ? i - behind : 0, std::min(i + ahead, piece.size() - 1)};
}

/// How the touch goes there.
[[nodiscard]] inline PlaceCurve way_about(const Action& action,
                                          const Piece& piece,
                                          const Window& near) {
    PlaceCurve way(action.joint);
    for (std::size_t k = near.first; k <= near.last; ++k) way.add(piece[k]->contact);
    return way;
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include "backspring/sensitivity/influence.hpp"
#include "stations.hpp"

namespace backspring::detail {

/// Influence on a blade beside others: a hair off at one station, tapering off to its neighbours.
///
/// @returns  stations left out, changes per mm taken off
[[nodiscard]] Influence influence_beside(const Design& design,
                                         GrindFace face,
                                         const Stations& stations);

/// The same of a blade alone, for results whose peak is a corner: theirs take the place of rows.
void replace_at_corners(Influence& result,
                        const std::vector<std::string>& corners,
                        const Design& design,
                        GrindFace face,
                        const Stations& stations);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include <optional>
#include <vector>

#include "backspring/grind/grind.hpp"
#include "backspring/grind/grind_table.hpp"

namespace backspring {

/// The liners' straight back, by its height above the pivot at two stations.
struct LinerLine {
    double rear_mm = 0.0;          ///< station [mm]
    double rear_height_mm = 0.0;   ///< above the pivot there [mm]
    double front_mm = 0.0;         ///< station ahead of it [mm]
    double front_height_mm = 0.0;  ///< above the pivot there [mm]
};

/// One pass of flush grinding.
struct FlushPass {
    double proud_mm = 0.0;  ///< most that stood proud before the pass [mm]
    GrindRow after;         ///< the spring after it; `removed_mm` counts from the start
};

/// What flush grinding does.
struct Flush {
    Profile before;                 ///< proud height by station, ahead of the middle pin
    GrindRow at_start;              ///< nothing removed
    std::vector<FlushPass> passes;  ///< in turn; none when flush already
    double left_proud_mm = 0.0;     ///< highest at the end, below 0 when all is low [mm]
    Profile removed;                ///< depth by station; empty when flush already
    Design design;                  ///< ground flush
};

/// Takes off the back all that stands proud of the liners with every blade open, pins in.
///
/// Height of the loaded back = free working face + deflection + thickness, the working face being
/// straight. A thinner spring bends more, so each pass is followed by a new solution, until no more
/// than 0.001 mm stands proud.
///
/// @param liners   none: the liners follow the back as it lies at open with the rear pin out, so
///                 that proud is what loading lifts
/// @param pass_mm  most that one pass takes off [mm], > 0
/// @throws InvalidInput   a bad design, line or pass
/// @throws NoConvergence  before it is flush a pin hole would open or no steel be left
/// @note  ahead of the middle pin only; the bulge between the pins (about 0.03 mm) is left out
[[nodiscard]] Flush grind_flush(const Design& design,
                                const std::optional<LinerLine>& liners,
                                double pass_mm = 0.05);

}  // namespace backspring

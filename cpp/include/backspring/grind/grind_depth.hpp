#pragma once

#include <optional>

#include "backspring/grind/grind.hpp"

namespace backspring {

/// The preload that gives a wanted pull, all else unchanged.
struct PreloadForPull {
    double preload_mm = 0.0;                   ///< [mm]
    std::optional<double> rear_pin_offset_mm;  ///< with two pins: rear hole to liner's hole [mm]
    std::optional<double> yield_margin;        ///< of the travel at that preload
};

/// Depth to take off a face for a wanted peak pull.
///
/// Pull falls as steel goes, so there is one depth at most; found to rounding error.
///
/// @param region  none: the whole face, see whole_face()
/// @param pull_n  peak pull wanted, opening [N], > 0
/// @returns       [mm], to be taken off `design`
/// @throws InvalidInput   a bad design, region or pull, or no nail nick
/// @throws NoConvergence  grinding cannot get there: says why, and which preload would
[[nodiscard]] double depth_for_pull(const Design& design,
                                    GrindFace face,
                                    const std::optional<GrindRegion>& region,
                                    double pull_n);

/// Preload that gives a wanted peak pull, all else unchanged.
///
/// Pull rises with preload; looked for up to the spring's thickest place.
///
/// @param pull_n  peak pull wanted, opening [N], > 0
/// @returns       nothing when no preload gives it
/// @throws InvalidInput  a bad design or pull, or no nail nick
/// @source rear-pin offset = preload L_r/a_p, similar triangles about the middle pin
[[nodiscard]] std::optional<PreloadForPull> preload_for_pull(const Design& design, double pull_n);

}  // namespace backspring

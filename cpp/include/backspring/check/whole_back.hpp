#pragma once

#include <optional>

#include "backspring/check/solution.hpp"

namespace backspring {

/// The back in one position against the back at open, pins in, proud positive.
struct BackAlong {
    double least_mm = 0.0;        ///< farthest below open, 0 where nothing is low [mm]
    double least_at_mm = 0.0;     ///< station of that [mm]
    double greatest_mm = 0.0;     ///< farthest above open, 0 where nothing is proud [mm]
    double greatest_at_mm = 0.0;  ///< station of that [mm]
    double per_dial_mm = 0.0;     ///< reading gained per mm the dial is set ahead [mm/mm]
};

/// The whole back from the middle pin to the spring's end.
struct WholeBack {
    std::optional<BackAlong> half_stop;  ///< none without that position
    std::optional<BackAlong> closed;     ///< none where the blade does not stay closed
};

/// How far the back in a position stands above the back at open, at one station.
///
/// e(x) = sum P C(x, x_P) there less the same at open; the free shape drops out.
///
/// @param x_mm  station ahead of the middle pin [mm]
/// @returns     [mm], proud positive
[[nodiscard]] double above_open_mm(const Joint& joint,
                                   const Contact& open,
                                   const Contact& position,
                                   double x_mm);

/// The least of above_open_mm() over the lift that a unit force at the pivot gives there.
///
/// Its sign tells whether any of the back is low, and crosses 0 although the back is never above 0
/// at the middle pin. The first thousandth of the back, where it hardly moves, is left out.
///
/// @returns  [N], below 0 where something is low
[[nodiscard]] double least_lift_n(const Joint& joint, const Contact& open, const Contact& position);

/// Where the back in a position crosses the back at open, nearest to the dial; none where it
/// nowhere does ahead of the middle pin.
///
/// @returns  [mm]
[[nodiscard]] std::optional<double> flush_station_mm(const Joint& joint,
                                                     const Contact& open,
                                                     const Contact& position);

/// Least and greatest of above_open_mm() from the middle pin, where it is 0, to the pad's end.
///
/// @param joint  with its pins in
/// @source unit-load theorem
[[nodiscard]] WholeBack whole_back(const Joint& joint, const Rests& rests);

/// The same of a solution, and of a design.
[[nodiscard]] WholeBack whole_back(Solution& solution);
[[nodiscard]] WholeBack whole_back(const Design& design);

}  // namespace backspring

#pragma once

#include <Eigen/Core>
#include <string>
#include <string_view>
#include <vector>

#include "backspring/grind/grind.hpp"

namespace backspring {

/// Where on the spring a pass of the grinder matters.
struct Influence {
    Eigen::ArrayXd station_mm;         ///< [mm]
    std::vector<std::string> figures;  ///< results by their names in a check, rows
    Eigen::ArrayXd value;              ///< of each result as it is
    Eigen::ArrayXXd change_per_pass;   ///< of each result, a column a station

    /// Changes of one result along the spring.
    ///
    /// @throws OutOfRange  the design has no such result
    [[nodiscard]] Eigen::ArrayXd of(std::string_view figure) const;
};

/// Change of results for 0.1 mm taken off one mm of the spring's length, at every station.
///
/// Analytic: at a station the flexibility rises by d(1/(E I)) = 3/(E I t) and d(1/(kappa G A)) =
/// 1/(kappa G A t) per mm taken off a whole section, by the net section's own rates where a hole
/// passes; what a contact makes of that is its implicit gradient. Each station stands for what
/// tapers off in a straight line to its neighbours. The sum of changes x lengths is that of a pass
/// over all of them. Preload stays as it is.
///
/// Beside other blades: each result of the case in which it is worst, by central differences of
/// whole solutions for 0.0001 mm off and on, from the pad of a blade at the other end on; good to
/// 1e-4 of the largest change.
///
/// @param face        back, or belly: then up to the pad, whose grinding would take preload
/// @param spacing_mm  between stations, at most [mm], 0.05 to 20
/// @throws InvalidInput  the pad as face, or with every broken rule
/// @source unit-load theorem, differentiated
/// @note  the worst station's own thinning raises the stress at once; it shows in the stations next
///        to it, the higher the closer they are
/// @note  where a peak is a corner of its curve, or two strokes come as high, by differences as
///        beside other blades, those of steel taken off
/// @note  readings with the rear pin out do not change: that spring is rigid
[[nodiscard]] Influence influence(const Design& design,
                                  GrindFace face = GrindFace::back,
                                  double spacing_mm = 0.5);

}  // namespace backspring

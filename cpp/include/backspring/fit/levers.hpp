#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backspring/design/design.hpp"

namespace backspring {

/// A face whose grinding moves the fit.
enum class LeverFace {
    half_stop,  ///< of the tang
    closed,     ///< of the tang, near the pivot; a kick's nose stays
    kick,       ///< the nose of the kick
    open,       ///< of the tang: the datum, and preload with it
    back,       ///< of the spring, from the middle pin to its end
    belly,      ///< of the spring, from the middle pin to the pad
};

/// A face's name as commands spell it.
[[nodiscard]] std::string name_of(LeverFace face);

/// Depth that a lever's numbers are for [mm].
inline constexpr double kLeverDepthMm = 0.1;

/// What 0.1 mm off one face changes, at the rate of the first hair; none where there is no such
/// number.
struct Lever {
    LeverFace face = LeverFace::closed;  ///< which face
    std::optional<double> half_stop_mm;  ///< change of the loaded half-stop reading [mm]
    std::optional<double> closed_mm;     ///< change of the loaded closed reading [mm]
    std::optional<double> tip_mm;        ///< move of the closed blade's tip, + out [mm]
    std::optional<double> edge_gap_mm;   ///< change of the least gap from edge to belly [mm]
    std::optional<double> peak_pull_n;   ///< change of the peak pull, opening [N]
    std::optional<double> yield_margin;  ///< change of the travel's yield margin
};

/// The levers of a fit: every face that this design has, against all that it moves.
///
/// Differences of full solutions with 0.005 mm on and off: so small that curvature adds 1e-4 of a
/// number, so large that rounding of a solution (1e-9 mm) adds less. Where nothing can be put on,
/// as on the spring, by the parabola through none, one and two such steps off.
///
/// @throws InvalidInput  with every broken rule
/// @note  the numbers are slopes: a whole pass bends them where another part begins to bear
[[nodiscard]] std::vector<Lever> levers(const Design& design);

}  // namespace backspring

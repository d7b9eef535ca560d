#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "backspring/fit/fit_plan.hpp"

namespace backspring {

/// A blade that is fitted, by its place in a design's list, and what a drawing cannot know of it.
struct FittedBlade {
    std::size_t blade = 0;  ///< from 0
    FitUnknowns unknowns;   ///< of this knife at that blade
};

/// What the dial showed of one of several blades; see as_read() for how the others stand.
struct BladeMeasured {
    std::size_t blade = 0;  ///< from 0
    Measured measured;      ///< its readings
    FitUnknowns unknowns;   ///< of this knife at that blade
};

/// The design with the faces of several blades moved until each reads as measured.
///
/// Blades that were not measured stay as drawn.
///
/// @throws InvalidInput   with every broken rule
/// @throws NoConvergence  no tangs of this design read so
[[nodiscard]] Design as_measured(const Design& design, const std::vector<BladeMeasured>& measured);

/// What to take off which face of which blade, in what order.
struct BladesPlan {
    std::vector<FitPlan> blades;  ///< of each, its own steps alone, seen from it
    std::vector<FitStep> steps;   ///< of all, in turn
    int passes = 0;               ///< passes in the plan; measure every blade after each
    double aim_mm = 0.0;          ///< loaded reading the last pass aims at [mm]
    Design now;                   ///< the knife as it stands
    Design done;                  ///< the knife when the plan is carried out
};

/// Plans the fit of several blades on one spring together.
///
/// What comes off one tang moves the readings of the others. The depths are those with which every
/// reading of every blade ends at the aim in that case of the other blades where it is lowest; each
/// blade is solved by fit_plan()'s rules with the others as found so far, in turn until none moves.
/// Every pass takes its share off all blades, and a face is finished only when what is left on the
/// other blades moves its readings by less than a quarter of a hair.
///
/// @param blades  those to fit; the others stay as they are
/// @throws InvalidInput   with every broken rule
/// @throws NoConvergence  a face's steel runs out before the target is met: says which
/// @source Gauss-Seidel iteration over the blades, Newton's method within each
[[nodiscard]] BladesPlan fit_plan(const Design& now,
                                  const std::vector<FittedBlade>& blades,
                                  FitState state,
                                  const PlanRules& rules = {});

/// Change of one blade's lowest loaded readings.
struct BladeMoves {
    std::string blade;                   ///< whose readings
    std::optional<double> half_stop_mm;  ///< change [mm]; none without one
    std::optional<double> closed_mm;     ///< change [mm]
};

/// What 0.1 mm off one face of one blade moves on every blade, at the rate of the first hair.
struct BladeLever {
    std::string blade;                 ///< whose face
    TangFace face = TangFace::closed;  ///< which
    std::vector<BladeMoves> moves;     ///< of every blade, in the design's order
};

/// The Jacobian of all blades' lowest loaded readings with all faces of their tangs.
///
/// Differences over 0.005 mm on and off, as levers() takes them.
///
/// @throws InvalidInput  with every broken rule
[[nodiscard]] std::vector<BladeLever> blade_levers(const Design& design);

}  // namespace backspring

#pragma once

#include <optional>
#include <vector>

#include "backspring/fit/fit_model.hpp"

namespace backspring {

/// What to leave when fitting with the rear pin out.
struct Allowance {
    double target_mm = 0.0;              ///< loaded reading wanted at both [mm]
    std::optional<double> half_stop_mm;  ///< unloaded reading to leave; none without one [mm]
    double closed_mm = 0.0;              ///< unloaded reading to leave [mm]
    Tang tang;                           ///< the tang that has these readings
};

/// The unloaded readings that come out at a wanted loaded reading.
///
/// Each position's own face is moved until its loaded reading is the target: the half-stop face,
/// and on the closed side the kick where it bears, else the closed face. What that tang reads with
/// the rear pin out is the allowance. Of several blades it is the own one's, with the others as
/// drawn, for the case of reading_cases() where its reading is lowest.
///
/// @param target_mm  loaded reading wanted [mm], -1 to 1
/// @throws InvalidInput   with every broken rule
/// @throws NoConvergence  no tang gives that reading
[[nodiscard]] Allowance allowance(const Design& design,
                                  double target_mm = 0.0254,
                                  const FitUnknowns& unknowns = {});

/// The allowances of all blades, in the design's order, fitted together: every loaded reading is
/// the target in that case of the other blades where it is lowest.
///
/// @throws InvalidInput   with every broken rule
/// @throws NoConvergence  no tangs give that reading
[[nodiscard]] std::vector<Allowance> allowances(const Design& design, double target_mm = 0.0254);

/// Readings before and after the back is ground.
struct BackGrindReadings {
    FitReadings before;          ///< as it stands
    FitReadings after;           ///< the same tang under the thinner spring
    Allowance allowance_before;  ///< for the target
    Allowance allowance_after;   ///< for the target, under the thinner spring
};

/// What grinding the back does to the readings.
///
/// The thinner spring presses less. What goes under load follows how its bending is shared out: an
/// even depth off a taper leaves the thin end weaker against the root, and more goes there; a rear
/// span that gives way less takes some of it back.
///
/// @param depth_mm   taken off the back from the middle pin to the spring's end [mm], >= 0
/// @param target_mm  loaded reading wanted [mm]
/// @throws InvalidInput  with every broken rule, no steel left, a hole opened
[[nodiscard]] BackGrindReadings readings_after_back_grind(const Design& design,
                                                          double depth_mm,
                                                          double target_mm = 0.0254);

}  // namespace backspring

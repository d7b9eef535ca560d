#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backspring/check/budget.hpp"
#include "backspring/check/stop_band.hpp"

namespace backspring {

/// What of a budget is known where a design's numbers cannot tell: a clearance of nothing may be
/// measured or not.
struct BudgetStated {
    bool pin_clearance = false;         ///< whether that of the spring's pins is
    bool pivot_clearance = false;       ///< whether that of the pivot is
    std::optional<Ends> modulus_mpa{};  ///< band of Young's modulus; none: it is known [MPa]
};

/// All that is left out, taken together.
struct BudgetSum {
    Ends reading_mm;        ///< root-sum-square of all effects, each side by itself [mm]
    Ends reading_worst_mm;  ///< all at their worst at once [mm]
    Ends pull_share;        ///< root-sum-square, of the peak pull
    Ends pull_worst_share;  ///< all at their worst at once
    std::optional<double> reading_target_mm{};  ///< what readings are held to, where stated [mm]
    bool beyond_target = false;                 ///< whether the readings' band is wider than that
    std::string closes_most;  ///< effect without which the readings' band shrinks most, if any
};

/// What a model leaves out of one design, greatest first, and its sum.
struct ErrorBudget {
    std::vector<BudgetRow> rows;  ///< by their part of the sum of readings or of pull
    BudgetSum sum;                ///< of the rows
};

/// Adds up a budget.
///
/// Effects are taken as independent of each other: the root of the sum of their squares, what adds
/// apart from what takes off.
///
/// @param reading_target_mm  largest distance from flush, loaded [mm]
[[nodiscard]] BudgetSum budget_sum(const std::vector<BudgetRow>& rows,
                                   const std::optional<double>& reading_target_mm);

/// Everything that is left out of a design and can be sized, beside the solver's own error.
///
/// What the design states is not in it. Other blades on the spring stand as they do.
///
/// @throws InvalidInput  with every broken rule
[[nodiscard]] ErrorBudget error_budget(const Design& design, const BudgetStated& stated = {});

/// Preload as it comes out of grinding and drilling, against the drawing [mm].
///
/// @source common practice, no source
inline constexpr double kUsualPreloadMm = 0.03;

/// A usual bow of a spring that is drawn straight, rear pin to pad, either way, or a fiftieth of a
/// shorter way [mm].
///
/// @source common practice, no source
inline constexpr double kUsualBowMm = 1.0;

/// A spring drawn straight, arched from its rear pin to the pad as a parabola.
///
/// It keeps the thickness of its steel, so that what is measured square to its stations grows. A
/// taper is taken to lie even on both sides of the mid-line, of which only the arch is a bow.
///
/// @param height_mm  above the pad's line, + towards the back; 0: the same spring [mm]
[[nodiscard]] Spring bowed(Spring spring, const Pad& pad, double height_mm);

/// What holds spring and blade, where it is not stated: liners, clearances.
[[nodiscard]] std::vector<BudgetRow> held_budget(Solution& solution, const BudgetStated& stated);

/// A bow of kUsualBowMm in a spring that is drawn straight; none of another.
///
/// A force that leans with the pad's face has a lever about the mid-line, and so has the stop;
/// where its place is not stated it is taken to bear in the middle.
[[nodiscard]] std::optional<BudgetRow> bow_budget(Solution& solution);

/// Young's modulus at both ends of its band.
[[nodiscard]] std::optional<BudgetRow> modulus_budget(Solution& solution,
                                                      const std::optional<Ends>& modulus_mpa);

/// Preload by kUsualPreloadMm more and less.
[[nodiscard]] BudgetRow preload_budget(Solution& solution);

/// What solving leaves: the peak pull of a travel looked at four times as closely, and how far the
/// dial moves until the torque left at a rest is gone.
[[nodiscard]] BudgetRow solver_budget(Solution& solution);

}  // namespace backspring

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backspring/check/solution.hpp"

namespace backspring {

/// Something that a model leaves out, sized for one design.
struct BudgetRow {
    std::string effect;                          ///< its fixed name
    std::optional<double> reading_low_mm = {};   ///< least it adds to a loaded reading [mm]
    std::optional<double> reading_high_mm = {};  ///< most [mm]
    std::optional<double> pull_low_share = {};   ///< least it adds to the peak pull, of it
    std::optional<double> pull_high_share = {};  ///< most
    std::string settled_by;                      ///< fixed name of what would settle it
};

/// The greater of both ends of a row's pull, its sign kept; none where pull does not change.
[[nodiscard]] std::optional<double> pull_share(const BudgetRow& row);

/// Where the stop bears on the spring's end, see stop_band(); none without one.
[[nodiscard]] std::optional<BudgetRow> stop_budget(Solution& solution);

/// Friction's couple on the spring at the hardest place of opening, see friction_couple(); none
/// where it counts already, or without friction.
[[nodiscard]] std::optional<BudgetRow> friction_couple_budget(Solution& solution);

/// How far friction at spring and pivot can keep a blade from seating: the spread of both readings
/// between the angles from which it would just slide; none without friction, or a rest.
///
/// @note the same friction at the open blade is left out
[[nodiscard]] std::optional<BudgetRow> stick_budget(Solution& solution);

/// What small slopes leave out, by the steepest slope s where tang and spring meet on the way:
/// about s^2/2 of the pull. Of a reading a sixth of that share of what the dial has moved.
///
/// @source a geometrically nonlinear beam (tests/oracle), preloads of 0.1 to 2.6 mm; the sixth fits
///         readings of preloads of 0.3 to 1.8 mm, or is up to a third more
[[nodiscard]] BudgetRow large_slope_budget(Solution& solution);

/// All of these, as far as the design has them: what contact leaves out.
[[nodiscard]] std::vector<BudgetRow> contact_budget(Solution& solution);

}  // namespace backspring

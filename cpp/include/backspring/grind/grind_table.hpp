#pragma once

#include <optional>
#include <vector>

#include "backspring/check/targets.hpp"
#include "backspring/grind/grind.hpp"

namespace backspring {

/// What a spring does after a cut: of the own blade, the worst of all positions of the others.
struct GrindRow {
    double removed_mm = 0.0;                            ///< depth of the cut [mm]
    double preload_mm = 0.0;                            ///< left [mm]
    double stiffness_n_per_mm = 0.0;                    ///< at the pivot station [N/mm]
    std::optional<double> peak_torque_nmm;              ///< opening; none without a stroke [N mm]
    std::optional<double> peak_pull_n;                  ///< opening, at the nail nick [N]
    double travel_peak_stress_mpa = 0.0;                ///< worst of the travel [MPa]
    double travel_peak_stress_station_mm = 0.0;         ///< where that is [mm]
    std::optional<double> yield_margin;                 ///< yield over that stress
    std::optional<double> yield_margin_low;             ///< with the lower limit of the yield
    std::optional<double> reading_loaded_half_stop_mm;  ///< none without that rest [mm]
    std::optional<double> reading_loaded_closed_mm;     ///< none without that rest [mm]
    std::optional<double> reading_loaded_open_mm;       ///< none for a blade alone [mm]
    std::vector<TargetResult> targets;                  ///< met or missed, as check() judges them
};

/// The row of a design as it is: to the last bit the numbers of its check, without its verdict.
///
/// @throws InvalidInput  with every broken rule
[[nodiscard]] GrindRow grind_row(const Design& design, double removed_mm);

/// Pull, stress, margin and readings against the depth taken off one face.
///
/// @param cut      face, region and full depth
/// @param step_mm  between rows [mm], > 0; the last row is the full depth
/// @returns        first row: nothing removed
/// @throws InvalidInput  as grind() does, a step not greater than 0, or more than 10 000 rows
[[nodiscard]] std::vector<GrindRow> grind_table(const Design& design,
                                                const Cut& cut,
                                                double step_mm);

/// Passes that take a depth off at a depth per pass; the last may be lighter.
///
/// @param depth_mm  to take off [mm], >= 0
/// @param pass_mm   depth per pass [mm], > 0
/// @throws InvalidInput  a pass not greater than 0, or more than 10 000 of them
[[nodiscard]] int grind_passes(double depth_mm, double pass_mm);

}  // namespace backspring

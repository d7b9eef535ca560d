#pragma once

#include <optional>

#include "backspring/fit/fit_model.hpp"

namespace backspring {

/// What a bench measures on a knife beside its readings, and what its spring bears.
struct BenchFigures {
    std::optional<double> start_pull_n;         ///< to break away, opening from closed [N]
    std::optional<double> peak_pull_n;          ///< greatest of all strokes, opening [N]
    std::optional<double> closing_peak_pull_n;  ///< greatest of all strokes, closing [N]
    double travel_peak_stress_mpa = 0.0;        ///< worst of the travel [MPa]
};

/// Pulls and stress of one knife, with what its drawing does not know.
///
/// Pulls are none where the blade does not snap, or without a nail nick. So that an estimate has a
/// derivative there, two strokes that are equally hard give 0.1 % more than either.
///
/// @throws InvalidInput  with every broken rule of the design
[[nodiscard]] BenchFigures bench_figures(const Design& design, const FitUnknowns& unknowns = {});

/// How far the spring's back moves under a weight, both pins in and the blade out.
///
/// @param weight_n    hung from the spring [N]
/// @param station_mm  where it hangs, 0 to the spring's end [mm]
/// @returns  movement at the dial [mm]
/// @throws InvalidInput  with every broken rule of the design
/// @throws OutOfRange    a station off the overhang
/// @source unit-load theorem, as deflection_per_force()
[[nodiscard]] double hung_movement_mm(const Design& design,
                                      double weight_n,
                                      double station_mm,
                                      const FitUnknowns& unknowns = {});

/// How one knife's closed blade lies in the handle, both pins in.
struct ClosedFigures {
    std::optional<double> tip_mm;  ///< tip against the handle's rim, + stands out [mm]
    std::optional<double> gap_mm;  ///< between edge and belly at the station asked [mm]
};

/// Tip and gap of one knife when closed, as closed_blade() and edge_gap_mm() have them.
///
/// @param station_mm  of the gap, from the middle pin [mm]
/// @returns  nothing of what the design does not tell
/// @throws InvalidInput   with every broken rule of the design
/// @throws NoConvergence  where the blade does not stay closed
[[nodiscard]] ClosedFigures closed_figures(const Design& design,
                                           double station_mm,
                                           const FitUnknowns& unknowns = {});

}  // namespace backspring

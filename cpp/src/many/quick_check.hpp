#pragma once

#include <limits>
#include <span>
#include <string_view>

#include "backspring/many/batch.hpp"

namespace backspring {

inline constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

/// What a check of one of many designs can say.
struct QuickCheck {
    RowStatus status = RowStatus::ok;
    double peak_pull_n = kNone;
    double peak_torque_nmm = kNone;
    double travel_peak_stress_mpa = kNone;
    double travel_peak_stress_angle_deg = kNone;
    double travel_peak_stress_station_mm = kNone;
    double yield_margin = kNone;
    double yield_margin_low = kNone;
    double reading_loaded_half_stop_mm = kNone;
    double reading_loaded_closed_mm = kNone;
    double reading_unloaded_half_stop_mm = kNone;
    double reading_unloaded_closed_mm = kNone;
    double force_open_n = kNone;
    double force_half_stop_n = kNone;
    double force_closed_n = kNone;
    double blade_angle_half_stop_deg = kNone;
    double blade_angle_closed_deg = kNone;
    double crest_from_closed_deg = kNone;
    double crest_from_half_stop_deg = kNone;
    double snap_energy_mj = kNone;
    double stiffness_n_per_mm = kNone;
};

/// What is worth working out; what nobody asked for is left out.
struct Wanted {
    bool stress = false;    ///< worst of the travel
    bool unloaded = false;  ///< readings with the rear pin out
    bool snap = false;      ///< energy of the snap
};

/// One result by its name.
struct QuickColumn {
    std::string_view name;
    double QuickCheck::*member;
    bool Wanted::*need;  ///< none: always worked out
};

[[nodiscard]] std::span<const QuickColumn> quick_columns();

/// Checks one design for what is wanted.
[[nodiscard]] QuickCheck quick_check(const Design& design, const Wanted& wanted);

}  // namespace backspring

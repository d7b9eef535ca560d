#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backspring/check/closed_blade.hpp"
#include "backspring/check/stop_band.hpp"
#include "backspring/check/targets.hpp"
#include "backspring/check/twist.hpp"
#include "backspring/check/verdict.hpp"
#include "backspring/core/notice.hpp"

namespace backspring {

/// The joint in one position.
struct Position {
    std::string name;                        ///< "open", "half_stop" or "closed"
    double blade_angle_deg = 0.0;            ///< where the blade rests [deg]
    double force_n = 0.0;                    ///< of the tang on the spring [N]
    std::vector<double> contacts_mm;         ///< places it bears, from the pivot, + ahead [mm]
    double energy_mj = 0.0;                  ///< strain energy [mJ]
    double torque_nmm = 0.0;                 ///< + resists opening; 0 where free to seat [N mm]
    double peak_stress_mpa = 0.0;            ///< worst along the spring [MPa]
    double peak_stress_station_mm = 0.0;     ///< where [mm]
    std::optional<double> yield_margin;      ///< yield over peak stress; none without stress
    std::optional<double> yield_margin_low;  ///< with the lower limit of the yield stress
    double reading_loaded_mm = 0.0;          ///< pins in, relative to open, + proud [mm]
    /// The same with the stop at open as it makes it least, and most; none at open, see StopBand
    std::optional<double> reading_loaded_low_mm = {};
    std::optional<double> reading_loaded_high_mm = {};  ///< see reading_loaded_low_mm [mm]
    std::optional<double> reading_unloaded_mm;  ///< rear pin out; none if it does not rest [mm]
};

/// The way between two positions as the hand feels it.
struct StrokeReport {
    std::string from_position;                   ///< position it starts from
    std::string to_position;                     ///< position it ends in
    Stroke stroke;                               ///< torque, crest and energy
    std::optional<double> start_pull_n;          ///< to break away, at the nail nick [N]
    std::optional<double> peak_pull_n;           ///< largest, opening [N]
    std::optional<double> closing_start_pull_n;  ///< to break away, closing [N]
    std::optional<double> closing_peak_pull_n;   ///< largest, closing [N]
    std::optional<double> snap_speed_rad_per_s;  ///< blade speed as it comes home [rad/s]
    std::optional<double> tip_speed_m_per_s;     ///< of the blade's tip [m/s]
};

/// The worst of the whole travel from closed to open.
struct Travel {
    double peak_force_n = 0.0;                ///< largest force on the spring [N]
    double peak_force_angle_deg = 0.0;        ///< [deg]
    double peak_stress_mpa = 0.0;             ///< largest bending stress, net section [MPa]
    double peak_stress_angle_deg = 0.0;       ///< [deg]
    double peak_stress_station_mm = 0.0;      ///< [mm]
    std::optional<double> yield_margin;       ///< yield over peak stress; none without stress
    std::optional<double> yield_margin_low;   ///< with the lower limit of the yield stress
    std::optional<double> yield_margin_high;  ///< with the upper limit
};

/// Another blade while this one is turned.
struct OtherBlade {
    std::string name;           ///< its name
    std::string position;       ///< where it stands: "closed", "half_stop" or "open"
    double force_low_n = 0.0;   ///< least force of its tang on the spring meanwhile [N]
    double force_high_n = 0.0;  ///< greatest force of its tang on the spring meanwhile [N]
};

/// One blade with the others in one of their positions.
///
/// Another blade that is free to seat does so anew at every angle, for the spring moves under it.
struct Beside {
    std::vector<OtherBlade> others;     ///< where they stand, and how hard they bear
    std::vector<Position> positions;    ///< open, half_stop (where there is one), closed
    std::vector<StrokeReport> strokes;  ///< opening, in turn
    Travel travel;                      ///< the worst between closed and open

    /// A position by its name; nothing when the blade does not rest there.
    [[nodiscard]] const Position* position(const std::string& name) const;
};

/// Everything one check says of a blade.
///
/// With several blades on the spring: of this one with all others closed; verdict, targets and
/// notices are the worst of all cases. Stress is the worst of the whole spring, energy is its own.
struct Check {
    std::string blade;                    ///< its name
    std::vector<Position> positions;      ///< open, half_stop (where there is one), closed
    std::vector<StrokeReport> strokes;    ///< opening, in turn
    Travel travel;                        ///< the worst between closed and open
    double stiffness_n_per_mm = 0.0;      ///< at the pivot station [N/mm]
    ClosedBlade closed_blade;             ///< tip and edge of the closed blade
    std::optional<StopBand> stop_band;    ///< what is not known of the stop at open
    std::vector<Margin> verdict;          ///< ways to fail, those that do first, notes last
    std::vector<TargetResult> targets;    ///< those the design states, and the yield margin
    std::vector<Notice> notices;          ///< what a maker should know
    std::vector<std::string> impossible;  ///< names of results left out as impossible
    std::vector<Beside> beside;           ///< a row for each case; none for a blade alone
    std::optional<Twist> twist;           ///< the worst of all cases, with blades side by side

    /// A position by its name; nothing when the blade has none.
    [[nodiscard]] const Position* position(const std::string& name) const;
};

/// Checks the design's own blade: three positions, the strokes between them, the worst of the
/// travel, readings.
///
/// Loaded readings are relative to the spring with every blade open; unloaded ones are of a spring
/// that turns on the pin next to the blade and lies on its tang, the other blades out.
///
/// A number that is impossible, see is_possible(), is none or NaN; then there is no verdict, and a
/// notice "out-of-bounds" names it.
///
/// @throws InvalidInput  with every broken rule
[[nodiscard]] Check check(const Design& design);

/// Checks every blade of a design, in its order.
[[nodiscard]] std::vector<Check> check_blades(const Design& design);

}  // namespace backspring

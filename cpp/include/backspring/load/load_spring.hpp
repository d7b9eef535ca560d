#pragma once

#include <optional>

#include "backspring/check/solution.hpp"

namespace backspring {

/// Nearest to the middle pin that a spring is pulled [mm].
inline constexpr double kLeastPullStationMm = 1.0;

/// How the spring is pulled out.
struct PullOut {
    std::optional<double> at_mm;     ///< station of the hook, pin or clamp; none: nearest [mm]
    double clearance_mm = 0.25;      ///< between pad and tang as it goes under [mm]
    std::optional<double> lever_mm;  ///< for the other way in: middle pin to hand [mm]
};

/// The other way in: blade open under the spring, rear pin last.
struct RearPinLast {
    double hole_to_go_mm = 0.0;           ///< the rear hole from its pin, spring on the tang [mm]
    double force_n = 0.0;                 ///< at the rear pin, to bring the hole home [N]
    std::optional<double> lever_force_n;  ///< by a bar clamped to the spring; none without one [N]
};

/// What it takes to pull the spring out until the tang goes under it, both pins in, blade out.
struct SpringLoading {
    double at_mm = 0.0;                        ///< station of the hook, pin or clamp [mm]
    PullOut pull;                              ///< what was asked
    double force_n = 0.0;                      ///< at the station, outward [N]
    double movement_mm = 0.0;                  ///< of the spring there [mm]
    double clears_last_mm = 0.0;               ///< station of the pad that asks for the force [mm]
    double peak_stress_mpa = 0.0;              ///< worst along the spring, net section [MPa]
    double peak_stress_station_mm = 0.0;       ///< where [mm]
    std::optional<double> yield_margin;        ///< yield over that stress; none without stress
    std::optional<double> yield_margin_low;    ///< with the lower limit of the yield stress
    std::optional<double> stop_before_mm;      ///< movement at which it would yield [mm]
    std::optional<double> stop_before_low_mm;  ///< with the lower limit of the yield stress [mm]
    std::optional<double> rear_pin_force_n;  ///< on the spring, outward; none without that pin [N]
    std::optional<double> middle_pin_force_n;  ///< on the spring, inward; none without two pins [N]
    std::optional<RearPinLast> rear_pin_last;  ///< the other way in; none without two pins
    double wanted_margin = 1.0;                ///< the design's target for the yield margin, or 1
    bool met = false;                          ///< whether the margin is as large as that
};

/// The station nearest to the open tang where a hook still gets under the spring: just behind the
/// tang, or at the pad's rear edge where that lies farther back; never behind the least station.
///
/// @returns  [mm]
[[nodiscard]] double nearest_pull_mm(const Design& design);

/// Force at a station that lifts the pad over the tang.
///
/// F = max over the pad of (Y(x) + clearance - y_f(x)) / C(x, at), never below 0: Y the top of the
/// tang, blade open, y_f the free working face. The spring is then a beam under that one force. The
/// worst stress is nominal, as in check(); a hole or a kink may begin to yield before.
///
/// The other way: the spring lies on the open tang, its rear hole preload L_r/a_p from the pin.
/// Bringing it home takes the rear pin's own force at open, sum P x / L_r.
///
/// All other blades are out. On a spring with one pin and a blade at each end, the spring counts as
/// held at the pin: it is, once the blade at the other end is in.
///
/// A lever turns about the middle pin: force times arm is the same.
///
/// @param pull  station 1 mm to the spring's end, clearance 0 to 5 mm, lever 1 to 1000 mm
/// @throws InvalidInput  with every broken rule
/// @source unit-load theorem; statics of a beam on two supports
[[nodiscard]] SpringLoading load_spring(Solution& solution, const PullOut& pull);

/// The same of a design.
[[nodiscard]] SpringLoading load_spring(const Design& design, const PullOut& pull);

}  // namespace backspring

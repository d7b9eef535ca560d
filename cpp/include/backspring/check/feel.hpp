#pragma once

#include <optional>
#include <vector>

#include "backspring/check/solution.hpp"

namespace backspring {

/// Friction of hardened steel on steel with some oil, where none is known, and its standard
/// deviation.
///
/// @source common practice, no source
inline constexpr double kUsualFriction = 0.12;
inline constexpr double kFrictionSpread = 0.04;  ///< see kUsualFriction

/// How much torque a blade takes to be turned out of a rest.
struct SeatStiffness {
    double open_nmm_per_deg = 0.0;                     ///< at its stop, as the blade leaves it
    std::optional<double> half_stop_nmm_per_deg = {};  ///< none without that rest
    std::optional<double> closed_nmm_per_deg = {};     ///< none without that rest
};

/// What the hand meets on the way, beside pull.
struct Feel {
    std::vector<double> rise_mm;         ///< of the spring at the pivot, each crest, opening [mm]
    std::optional<double> evenness;      ///< peak torque of the lighter stroke over the other's
    SeatStiffness seat;                  ///< dT/dtheta at the rests
    double dial_lift_mm = 0.0;           ///< most of the travel over open, at the dial [mm]
    std::optional<double> pull_oiled_n;  ///< peak pull with the least friction, see oiled() [N]
    std::optional<double> pull_dry_n;    ///< with the most, see dry() [N]
};

/// Friction of an oiled joint: both coefficients lower by 0.04, not below 0; 0.08 where none is
/// known, which is where both are 0.
///
/// @source common practice, no source: 0.12 +- 0.04 for hardened steel on steel with some oil
[[nodiscard]] Friction oiled(const Friction& friction);

/// Friction of a dry joint: both coefficients higher by 0.04, at most 1; 0.16 where none is
/// known.
///
/// @source as oiled()
[[nodiscard]] Friction dry(const Friction& friction);

/// Works out what the hand meets.
///
/// Rise: deflection at the pivot station on the crest less that at the rest the stroke starts from.
/// Evenness is 1 where both strokes take the same torque; none without two strokes. Seat
/// stiffness: the torque's rate dT/dtheta at a rest without friction, from angles 0.01 deg apart.
///
/// @note  1 to 1.5 mm of rise suit a hand-size knife: common practice, no source
/// @note  where a kick and a face share a rest, or an edge of the pad bears, the torque has a
///        corner there: the stiffness is then the mean of both sides
[[nodiscard]] Feel feel(Solution& solution);

/// The same of a design.
///
/// @throws InvalidInput  with every broken rule
[[nodiscard]] Feel feel(const Design& design);

}  // namespace backspring

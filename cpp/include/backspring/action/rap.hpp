#pragma once

#include <optional>
#include <span>
#include <vector>

#include "backspring/action/turns.hpp"

namespace backspring {

/// How far a closing blade runs past its closed rest.
struct Overtravel {
    double angle_deg = 0.0;         ///< past the rest, >= 0 [deg]
    double stored_mj = 0.0;         ///< taken up by the spring [mJ]
    double friction_work_mj = 0.0;  ///< taken by friction on the way [mJ]
};

/// The overtravel that takes up an energy: U(theta) - U(rest) + friction's work = energy.
///
/// Gravity and what the spring's own mass takes are left out, so it is an upper limit; the blade's
/// inertia sets how fast this goes, not how far.
///
/// @param closed     contact at the closed rest
/// @param energy_mj  of the blade at the rest [mJ], >= 0
/// @returns          nothing when it is not stopped before -45 deg
/// @throws InvalidInput  energy negative or not finite
/// @source conservation of energy
/// @note   the tang meets the pad only: nothing behind it is looked at
[[nodiscard]] std::optional<Overtravel> overtravel(const Action& action,
                                                   const Contact& closed,
                                                   double energy_mj);

/// The same of several energies, on one way past the rest.
///
/// @throws InvalidInput  an energy negative or not finite
[[nodiscard]] std::vector<std::optional<Overtravel>> overtravels(
    const Action& action, const Contact& closed, std::span<const double> energies_mj);

/// What closing with a snap does to the edge.
struct Rap {
    double energy_mj = 0.0;                   ///< of the blade at its closed rest [mJ]
    std::optional<Overtravel> past;           ///< none: not stopped before -45 deg
    std::optional<double> edge_dip_mm;        ///< edge towards the spring's belly [mm]
    std::optional<double> clearance_left_mm;  ///< below 0: the edge strikes; where it is given [mm]
};

/// How far the edge dips towards the spring as the blade snaps shut.
///
/// dip = overtravel [rad] x edge radius. The spring's own lift, which makes room, is not counted.
///
/// @param edge_radius_mm     pivot to the place of the edge, its tip where it dips most [mm], > 0
/// @param edge_clearance_mm  edge to the spring's belly when closed, if known [mm]
/// @throws InvalidInput  a radius not above 0, a negative clearance or energy
[[nodiscard]] Rap rap(const Action& action,
                      const Contact& closed,
                      double energy_mj,
                      double edge_radius_mm,
                      std::optional<double> edge_clearance_mm);

}  // namespace backspring

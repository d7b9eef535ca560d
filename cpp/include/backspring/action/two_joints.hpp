#pragma once

#include <optional>

#include "backspring/action/rest.hpp"

namespace backspring {

/// Two tangs on one spring, each joint seen from its own end.
///
/// The root of each joint is the pin next to it.
struct TwoJoints {
    Joint first;                     ///< stations from its own pin, + towards its pivot
    Joint second;                    ///< the same, seen from the other side
    bool turns = false;              ///< one pin between them, on which the whole spring turns
    double cross_rad_per_nmm = 0.0;  ///< two pins: turn of one root per moment at the other
};

/// How a blade stands: held at an angle, or free to seat within reach of it.
struct BladeStand {
    double blade_angle_deg = 0.0;  ///< [deg]
    double reach_deg = 0.0;        ///< 0: held [deg]
};

/// Both tangs bearing on the spring.
struct TwoContacts {
    Contact first;                 ///< energy is of the whole spring
    Contact second;                ///< energy is of the whole spring
    double first_turn_rad = 0.0;   ///< how far the other end turns this root, + outward [rad]
    double second_turn_rad = 0.0;  ///< the same of the other root [rad]
};

/// Where both tangs bear, and how hard, each feeling the other through the spring.
///
/// One pin: the spring turns until both tangs give the same moment about it. Two pins: the moment
/// of either overhang, M = sum P x, turns the other's root by the cross rotation. Either is one
/// unknown, found to rounding error. Each joint is solved as it would be alone, with its face
/// turned, so that the torque on a blade is dU/dtheta of the whole spring, the other blade held or
/// free to seat.
///
/// @returns  nothing when a blade that is free to seat finds no rest
/// @throws OutOfRange  a blade held at less than -45 or more than 225 deg
/// @source statics; unit-load theorem
/// @note   the spring turns on its pin, and a blade seats, without friction
[[nodiscard]] std::optional<TwoContacts> contacts_at(const TwoJoints& joints,
                                                     const BladeStand& first,
                                                     const BladeStand& second);

/// Moment of a contact about the pin next to it, outward positive.
///
/// @returns  [N mm]
[[nodiscard]] double root_moment_nmm(const Contact& contact);

}  // namespace backspring

#pragma once

#include "backspring/action/friction.hpp"

namespace backspring {

/// What friction's bending of the spring adds to a blade's torque, beside friction's own.
struct FrictionCouple {
    double opening_nmm = 0.0;  ///< to the torque against opening [N mm]
    double closing_nmm = 0.0;  ///< to the torque left when closing, below 0 resists it [N mm]
};

/// The contact while the blade slides, friction dragging the spring's face with it.
///
/// The drag acts on the face, half a thickness off the mid-line: it bends the spring as an
/// AxialPush does, and the forces change until the places of contact fit again.
///
/// @param opening  which way the blade turns: opening it drags the face towards the pins
/// @source statics; Coulomb friction
/// @note   where the tang bears is left where it was; of other blades nothing changes, but that one
///         which is taken along drags as well
[[nodiscard]] Contact sliding_contact(const Spring& spring,
                                      const Joint& joint,
                                      const Contact& contact,
                                      const Friction& friction,
                                      bool opening);

/// Outward movement of the spring at a station while the blade slides, drag and all [mm].
[[nodiscard]] double sliding_deflection_mm(const Spring& spring,
                                           const Joint& joint,
                                           const Contact& contact,
                                           const Friction& friction,
                                           bool opening,
                                           double x_mm);

/// What that changes of the torque, both ways.
[[nodiscard]] FrictionCouple friction_couple(const Spring& spring,
                                             const Joint& joint,
                                             const Contact& contact,
                                             const Friction& friction);

}  // namespace backspring

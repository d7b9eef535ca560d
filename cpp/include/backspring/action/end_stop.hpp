#pragma once

#include <optional>

#include "backspring/action/contact.hpp"

namespace backspring {

/// The stop on the end of a loaded spring.
///
/// Its force R goes towards the pins, square to the stop's face: along the spring at 180 deg, at a
/// height y_s above the pivot. On the beam that is M(x) = R (y_s - y_mid(x)), the mid-line taken as
/// the open blade bends it. Friction adds a share of R across the end, and so does a stated face
/// that leans with the blade.
///
/// @throws OutOfRange  for a spring that ends behind the middle pin
[[nodiscard]] EndStop make_end_stop(const Spring& spring, const Joint& joint, const Stop& stop);

/// The same stop bearing somewhat farther outward.
[[nodiscard]] EndStop raised(EndStop stop, const Joint& joint, double by_mm);

/// Thickness of the spring's end [mm].
[[nodiscard]] double end_thickness_mm(const Spring& spring, const Pad& pad);

/// Height above the belly at which a stop bears: at the back of an end that is thinner [mm].
[[nodiscard]] double bearing_height_mm(const Stop& stop, double end_thickness_mm);

/// The joint at a blade angle while its stop presses with a given force; none: as contact_at().
///
/// The force's own work is in the energy; the torque is of the tang's contact alone.
///
/// @param stop_n  >= 0 [N]
[[nodiscard]] Contact contact_on_stop(const Joint& joint, double blade_angle_deg, double stop_n);

/// Lever of the stop's force about the pivot [mm].
[[nodiscard]] double stop_lever_mm(const Joint& joint, double blade_angle_deg);

/// How deep the stop's face stands in the end of the unloaded spring, pins in [mm].
///
/// dU/dtheta of spring and stop is the contact's torque and R times this one's rate.
[[nodiscard]] double stop_overlap_mm(const Joint& joint, double blade_angle_deg);

/// How far the end has given way towards the pins where the stop bears [mm].
[[nodiscard]] double end_gives_way_mm(const Joint& joint, const Contact& contact);

/// Slope that the stop's force gives the spring's face at a station.
[[nodiscard]] double stop_slope(const Joint& joint, const Contact& contact, double x_mm);

/// The joint at an angle, the stop taking all that the contact turns the blade on with.
[[nodiscard]] Contact leaning_at(const Joint& joint, double blade_angle_deg);

/// The same from the contact there that no stop presses on.
[[nodiscard]] Contact leaning_from(const Joint& joint, const Contact& plain);

/// The same, soon found by a contact that no stop presses on at an angle near by.
[[nodiscard]] Contact leaning_near(const Joint& joint,
                                   double blade_angle_deg,
                                   const Contact& plain);

/// The contact at the same angle that no stop presses on.
[[nodiscard]] Contact without_stop(const Joint& joint, const Contact& open);

/// The open blade at rest against its stop: R = -T/y_s, so that nothing turns it.
///
/// With a stop's face the blade stands where that meets the end, or else at 180 deg. A spring that
/// does not press the blade on leaves the stop without force.
///
/// @source statics
[[nodiscard]] Contact open_on_stop(const Joint& joint);

/// Where the blade stands open with the rear pin out, the straight spring lying on its tang and
/// its end on the stop's face [deg].
[[nodiscard]] double unloaded_open_deg(const Spring& spring,
                                       const Joint& unloaded,
                                       const Stop& stop);

/// Pin forces on the spring of an open blade, with two pins.
struct OpenPinForces {
    PinForces across;      ///< square to the spring
    double along_n = 0.0;  ///< of the middle pin, against the stop [N]
};

/// What the pins hold while the blade stands open, the stop's force taken by the middle one.
///
/// @source statics
[[nodiscard]] OpenPinForces open_pin_forces(const Spring& spring,
                                            const Joint& joint,
                                            const Contact& open);

}  // namespace backspring

#pragma once

#include <array>
#include <optional>

#include "indenters.hpp"

namespace backspring::detail {

/// Adds a touch of an indenter to its own blade's contact.
void add_touch(Contact& contact, const Indenter& indenter, const Touch& touch);

/// As contact_at(), while a stop presses on this end of the spring, or none.
///
/// @param guess  about where a blade alone bears, if that is known
[[nodiscard]] Contact find_contact(const Joint& joint,
                                   double blade_angle_deg,
                                   const Pushed* pushed,
                                   const PlaceGuess* guess = nullptr);

/// As find_contact(), of a blade that is alone on its spring.
[[nodiscard]] Contact contact_alone(const Joint& joint,
                                    double blade_angle_deg,
                                    const Pushed* pushed,
                                    const PlaceGuess* guess);

/// Whether a blade's kick, if it has one, surely stands clear of the spring that its body bends.
[[nodiscard]] bool kick_clears(const Joint& joint, const Indenter& body, const Touch& touch);

/// How far a blade alone's body or kick stands clear of the face that the other of both bends.
///
/// @param bears  which of both bends it, and about where
/// @param other  where the first would bear as well; on that side of it
/// @returns      below 0 where it does bear [mm]; nothing where that is not known
[[nodiscard]] std::optional<double> clear_by_mm(const Joint& joint,
                                                double blade_angle_deg,
                                                const Touch& bears,
                                                const Touch& other);

/// The contact of a blade alone whose body and kick bear on the same parts as at an angle near by;
/// nothing where that does not tell it.
[[nodiscard]] std::optional<Contact> both_bear_as(const Joint& joint,
                                                  double blade_angle_deg,
                                                  const std::array<Touch, 2>& touches);

/// The same where its kick alone bears, as it does at an angle near by.
[[nodiscard]] std::optional<Contact> kick_bears_as(const Joint& joint,
                                                   double blade_angle_deg,
                                                   const Touch& touch);

/// As find_contact(), of a blade that is not alone on its spring.
[[nodiscard]] Contact contact_with_others(const Joint& joint,
                                          double blade_angle_deg,
                                          const Pushed* pushed);

/// A far end's touch as the own end sees it, and the other way round.
[[nodiscard]] inline Touch seen_from_own(const Joint& joint, Touch touch) {
    touch.x_mm = -joint.far_end->span_mm - touch.x_mm;
    touch.slope = -touch.slope;
    return touch;
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

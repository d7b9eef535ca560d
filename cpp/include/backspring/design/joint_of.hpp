#pragma once

#include "backspring/action/joint.hpp"
#include "backspring/design/design.hpp"
#include "backspring/spring/bending.hpp"

namespace backspring {

/// The design's own blade on its spring with the pins in, the other blades where they stand.
///
/// An other blade is held open by its stop; closed or at its half-stop it is free to seat. With a
/// blade at each end and no rear pin the spring turns on the middle pin.
[[nodiscard]] Joint make_joint(const Design& design);

/// The spring's deflection per force as its pins hold it: with the frame's give, where it is
/// stated.
///
/// @note  a frame counts with two pins only
[[nodiscard]] Flexibility make_flexibility(const Design& design);

/// The same where stretches of a spring that differs in little are known.
[[nodiscard]] Flexibility flexibility_from(std::span<const WholeStretch> known,
                                           const Design& design);

/// The design's frame under its joint; none where it is not stated.
[[nodiscard]] std::optional<JointFrame> frame_of(const Design& design);

/// Height that liners must exceed to hold all pins: from the back edge to the far side of the
/// deepest one, and half a diameter of metal on both sides of each.
///
/// @returns  [mm]
[[nodiscard]] double least_liner_height_mm(const Design& design);

/// The design's own blade alone on its spring, pins in.
[[nodiscard]] Joint make_joint_alone(const Design& design);

/// Which of the design's blades each of the joint's is, as Part::blade counts them.
[[nodiscard]] std::vector<std::size_t> blades_in_joint(const Design& design);

/// Whether a blade turns on the same pin as the own one.
[[nodiscard]] bool on_own_pin(const Design& design, const Blade& blade);

/// Width over which the own tang bears: blades on one pin share the spring's equally [mm].
[[nodiscard]] double bearing_width_mm(const Design& design);

/// The own blade with the rear pin and all other blades out.
[[nodiscard]] Joint make_unloaded_joint(const Design& design);

/// Where the stress of the spring can peak, at both ends if blades bear at both.
[[nodiscard]] StressProbe make_stress_probe(const Design& design);

}  // namespace backspring

#pragma once

#include <span>

namespace backspring {

/// Which pin a hole is for.
enum class HoleFor {
    neither,     ///< a hole that no pin of the joint goes through
    middle_pin,  ///< the pin that the spring turns on, at station 0
    rear_pin,    ///< the pin that holds the rear end home
};

/// A round pin hole across the spring.
struct Hole {
    double center_mm = 0.0;          ///< station of the centre [mm]
    double diameter_mm = 0.0;        ///< [mm]
    double offset_mm = 0.0;          ///< centre from the mid-line, + towards the back [mm]
    HoleFor pin = HoleFor::neither;  ///< the pin that goes through it
};

/// The spring's hole for a pin; none where it has none.
[[nodiscard]] const Hole* hole_for(HoleFor pin, std::span<const Hole> holes);

/// Thickness the hole takes away at a station.
///
/// c = 2 sqrt((d/2)^2 - (x - x_h)^2), nothing outside the hole.
///
/// @returns  [mm]
[[nodiscard]] double chord_mm(const Hole& hole, double x_mm);

}  // namespace backspring

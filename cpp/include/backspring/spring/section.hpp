#pragma once

namespace backspring {

/// Net section across the spring, about its own centroid.
struct Section {
    double area_mm2;     ///< [mm2]
    double inertia_mm4;  ///< second moment of area [mm4]
    double back_mm;      ///< centroid to the back's outer fibre [mm]
    double belly_mm;     ///< centroid to the belly's outer fibre [mm]
};

/// Rectangle with a slot where a pin hole passes.
///
/// A = b (t - c); ybar = -b c e / A;
/// I = b t^3/12 + b t ybar^2 - [b c^3/12 + b c (e - ybar)^2].
///
/// @param width_mm      across the liners [mm], > 0
/// @param thickness_mm  [mm], > 0
/// @param chord_mm      taken away by the hole [mm], 0 to less than the thickness
/// @param offset_mm     hole's centre from the mid-line, + towards the back [mm]
/// @source parallel-axis theorem
[[nodiscard]] Section make_section(double width_mm,
                                   double thickness_mm,
                                   double chord_mm = 0.0,
                                   double offset_mm = 0.0);

/// Bending stress in the outer fibre farther from the centroid, for a unit moment.
///
/// @returns  [MPa / (N mm)]
[[nodiscard]] double outer_stress_per_moment(const Section& section);

}  // namespace backspring

#pragma once

namespace backspring {

/// Root of Neuber's length of a steel in bending, a measure of its grain.
///
/// 0.246 - 3.08e-3 S + 1.51e-5 S^2 - 2.67e-8 S^3 in inch^0.5, S in kpsi.
///
/// @param tensile_mpa  tensile strength, 340 MPa or more [MPa]
/// @returns            [mm^0.5]; 0 above 1700 MPa, where the polynomial has come down to it
/// @throws OutOfRange  below 340 MPa
/// @source shigley-9; the ends of its range from memory
/// @note   the rounded metric form of the same polynomial lies within 0.01 mm^0.5
[[nodiscard]] double neuber_root_length(double tensile_mpa);

/// Share of a notch's stress concentration that fatigue feels.
///
/// q = 1/(1 + sqrt(a/r)).
///
/// @param tensile_mpa     340 MPa or more [MPa]
/// @param root_radius_mm  > 0 [mm]
/// @returns               0 to 1; 1 above 1700 MPa, the hard spring feels all of it
/// @throws OutOfRange     below 340 MPa, or no root radius
/// @source shigley-9
/// @note                  at 1700 MPa it steps up by 0.07 with a root radius of 0.1 mm, by 0.03
///                        with 0.5 mm
[[nodiscard]] double notch_sensitivity(double tensile_mpa, double root_radius_mm);

/// Fatigue notch factor Kf = 1 + q (Kt - 1).
///
/// @param factor       Kt, local over nominal stress
/// @param sensitivity  q, from notch_sensitivity
/// @source shigley-9
[[nodiscard]] double fatigue_notch_factor(double factor, double sensitivity);

}  // namespace backspring

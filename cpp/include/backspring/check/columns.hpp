#pragma once

#include "backspring/action/sweep_columns.hpp"
#include "backspring/check/look.hpp"

namespace backspring {

/// Sweeps a design over blade angles.
///
/// @param step_deg  [deg], > 0
/// @param from_deg  first angle [deg], at least -45
/// @param to_deg    last angle [deg], at most 225
/// @returns         columns of one length
/// @throws InvalidInput  with every broken rule
/// @throws OutOfRange    for an angle outside the model
[[nodiscard]] Sweep sweep(const Design& design,
                          double step_deg = 1.0,
                          double from_deg = 0.0,
                          double to_deg = 180.0);

/// The loaded spring from its rearmost pin, or the middle pin, to its end; with a blade at the rear
/// from the end of that blade's face.
struct SpringAlong {
    Eigen::ArrayXd station_mm;        ///< [mm]
    Eigen::ArrayXd thickness_mm;      ///< [mm]
    Eigen::ArrayXd face_mm;           ///< free working face above the pivot's height [mm]
    Eigen::ArrayXd deflection_mm;     ///< outward, 0 between the pins [mm]
    Eigen::ArrayXd back_stress_mpa;   ///< bending stress on the back, tension positive [MPa]
    Eigen::ArrayXd belly_stress_mpa;  ///< bending stress on the belly, tension positive [MPa]
};

/// Shape and stress along the spring at one blade angle.
///
/// @param spacing_mm  between stations; every kink, step and hole edge is added [mm], > 0
/// @returns           columns of one length
/// @throws InvalidInput  with every broken rule
/// @note  the small bulge between the pins is left out of the deflection (about 0.03 mm)
[[nodiscard]] SpringAlong spring_along(const Design& design,
                                       double blade_angle_deg,
                                       double spacing_mm = 0.1);

}  // namespace backspring

#pragma once

namespace backspring {

/// Stress at a notch beside what the section alone would carry.
struct LocalStress {
    double nominal_mpa = 0.0;  ///< of the net section at that place, tension positive [MPa]
    double factor = 1.0;       ///< local over nominal
    double local_mpa = 0.0;    ///< tension positive [MPa]
    double station_mm = 0.0;   ///< [mm]
};

/// A nominal stress with its notch factor applied.
///
/// @param nominal_mpa  tension positive [MPa]
/// @param factor       from kink_factor, one_sided_shoulder_factor and the like
/// @param station_mm   [mm]
[[nodiscard]] constexpr LocalStress local_stress(double nominal_mpa,
                                                 double factor,
                                                 double station_mm) {
    return {nominal_mpa, factor, factor * nominal_mpa, station_mm};
}

}  // namespace backspring

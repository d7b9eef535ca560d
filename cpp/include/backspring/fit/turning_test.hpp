#pragma once

#include <optional>
#include <vector>

namespace backspring {

/// Readings with the bushing turned in the tang by one quarter after another.
struct TurnedReading {
    int quarter = 0;                     ///< turns of 90 deg from the first setting, 0 to 3
    std::optional<double> half_stop_mm;  ///< relative to open in the same setting [mm]
    std::optional<double> closed_mm;     ///< [mm]
};

/// What a turning test tells; nothing for what its readings leave unknown.
struct TurningTest {
    std::optional<double> half_stop_mm;     ///< what a round bushing will read [mm]
    std::optional<double> closed_mm;        ///< [mm]
    std::optional<double> eccentricity_mm;  ///< of the bushing's outside to its hole [mm]
    std::optional<double> oval_mm;          ///< amplitude of its oval along the quarters [mm]
    std::optional<double> scatter_mm;       ///< standard deviation of one reading about this [mm]
    double half_stop_spread_mm = 0.0;       ///< greatest less least reading [mm]
    double closed_spread_mm = 0.0;          ///< [mm]
};

/// Tells a bushing that is not round from the blade's own readings.
///
/// The bushing turns with the blade, and its radius towards the spring errs by
/// e cos(a - a1) + o cos 2(a - a2). A reading is relative to open, so with the bushing set at phi
/// it errs at closed by 2 e cos(phi - a1), at the half-stop by e (cos - sin)(phi - a1) -
/// 2 o cos 2(phi - a2). Over four quarters both errors sum to nothing: the mean is what a round
/// bushing reads. Solved by least squares; fewer quarters leave some of it unknown.
///
/// @param readings  at least one number, each quarter once
/// @throws InvalidInput  no reading, a quarter outside 0 to 3 or twice, a reading not finite or
///                       beyond 10 mm
/// @source Fourier series of the radius, first and second harmonic
/// @note  an oval that lies between the quarters shows at none of them, and does not err there:
///        the amplitude told is the part along the quarters, a lower limit
[[nodiscard]] TurningTest turning_test(const std::vector<TurnedReading>& readings);

}  // namespace backspring

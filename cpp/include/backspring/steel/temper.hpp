#pragma once

#include <array>

#include "backspring/core/band.hpp"

namespace backspring {

/// A stay at one temperature.
struct Heat {
    double temperature_c = 0.0;  ///< [C]
    double time_h = 0.0;         ///< [h]
};

/// Hardness of a hardened steel after tempering, fitted to published experiments.
///
/// P = T (C + log10 t) / 1000, T in kelvin and t in hours; x = (P - mean) / deviation;
/// HRC = c0 + c1 x + c2 x^2 + c3 x^3. The limits are those of the points that were fitted.
///
/// @source hollomon-jaffe-1945
struct TemperFit {
    double time_constant = 18.0;              ///< C
    double mean = 0.0;                        ///< mean of P over the points
    double deviation = 1.0;                   ///< standard deviation of P over the points
    std::array<double, 4> coefficients = {};  ///< c0, c1, c2, c3 [HRC]
    double spread_hrc = 0.0;        ///< half width of the answer's band: rms error or more [HRC]
    double coolest_c = 195.0;       ///< [C]
    double hottest_c = 620.0;       ///< [C]
    double shortest_h = 1.0 / 6.0;  ///< 600 s [h]
    double longest_h = 24.0;        ///< [h]
    double softest_hrc = 25.0;      ///< [HRC]
};

/// Hardness after a later heat.
struct HeatEffect {
    Band hardness_hrc;                  ///< what is left [HRC]
    bool extrapolated_in_time = false;  ///< the heat was shorter than any that was fitted
};

/// What temperature and time do together, P = T (C + log10 t) / 1000.
///
/// @param fit   gives C
/// @param heat  temperature above -273.15 C, time above 0 h
/// @throws InvalidInput  for any other heat
/// @source hollomon-jaffe-1945
[[nodiscard]] double temper_parameter(const TemperFit& fit, const Heat& heat);

/// Hardness after one temper.
///
/// @param fit     the steel's fit
/// @param temper  within the fit's temperatures and times
/// @returns       [HRC]
/// @throws OutOfRange   outside the fit, or softer than its softest point
/// @throws InvalidInput for a fit whose deviation is not greater than 0
/// @source hollomon-jaffe-1945
[[nodiscard]] Band hardness_after_temper(const TemperFit& fit, const Heat& temper);

/// Temper that leaves a hardness.
///
/// @param fit           the steel's fit
/// @param hardness_hrc  within what the fit's temperatures give after that time
/// @param time_h        hold, within the fit's times
/// @returns             [C]
/// @throws OutOfRange   outside the fit
[[nodiscard]] double temper_for_hardness(const TemperFit& fit, double hardness_hrc, double time_h);

/// Hardness left when a tempered part is heated once more, as by a hot moment at the grinder.
///
/// The temper is turned into the time at the later temperature that has the same P; the later time
/// is added to it. Below the fit's coolest temperature nothing changes in a stay no longer than
/// the temper.
///
/// @param fit     the steel's fit
/// @param temper  the first heat, within the fit
/// @param later   up to the fit's hottest and longest; may be shorter than its shortest
/// @throws OutOfRange  outside the fit, or softer than its softest point
/// @source hollomon-jaffe-1945
/// @note  The fit leaves out stays under 600 s. P itself stays inside the fitted range, so a
/// shorter one is answered, and marked as extrapolated in time. Heating up and cooling down are
/// not counted: take the time near the top.
[[nodiscard]] HeatEffect hardness_after_heat(const TemperFit& fit,
                                             const Heat& temper,
                                             const Heat& later);

}  // namespace backspring

#pragma once

#include <optional>
#include <span>
#include <vector>

#include "backspring/spring/spring.hpp"

namespace backspring {

/// A force of the tang on the spring.
struct Load {
    double x_mm = 0.0;     ///< station [mm]: ahead of the middle pin, or behind all pins [mm]
    double force_n = 0.0;  ///< outward [N]
};

/// Largest bending stress and where it is.
struct PeakStress {
    double stress_mpa = 0.0;  ///< magnitude in the outer fibre [MPa]
    double station_mm = 0.0;  ///< [mm]
};

/// Bending moment at a station.
///
/// M = sum P_k max(x_k - x, 0) ahead of the middle pin, and likewise behind the rear pin; between
/// the pins it runs in a straight line from one to the other. Without a rear pin it is inside the
/// hold (0) behind the middle pin, unless a force acts there.
///
/// @returns  [N mm], + bends the pad outward
/// @source statics
[[nodiscard]] double bending_moment_nmm(const Spring& spring,
                                        std::span<const Load> loads,
                                        double x_mm);

/// Forces of the pins on the spring.
struct PinForces {
    double middle_n = 0.0;  ///< inward, towards the pivot [N]
    double rear_n = 0.0;    ///< outward [N]
};

/// Pin forces that hold the spring, with two pins.
///
/// With M_m and M_r the moments at the pins: rear = (M_m - M_r)/L_r - sum P behind it; middle =
/// sum P ahead of it + (M_m - M_r)/L_r.
///
/// @source statics
[[nodiscard]] PinForces pin_forces(const Spring& spring, std::span<const Load> loads);

/// Outer-fibre stress at one station, tension positive.
struct FibreStress {
    double back_mpa = 0.0;   ///< on the back [MPa]
    double belly_mpa = 0.0;  ///< on the belly [MPa]
};

/// Nominal bending stress on back and belly at a station, net section.
///
/// @returns  [MPa], tension positive
/// @note     no notch factor: see the limits in README
[[nodiscard]] FibreStress fibre_stress(const Spring& spring,
                                       std::span<const Load> loads,
                                       double x_mm);

/// Where peak stress can lie, found once for a spring.
struct StressProbe {
    struct Place {
        double x_mm;
        double stress_per_moment;
        double stress_per_push = 0.0;  ///< of a force along the spring, spread evenly
    };
    /// A whole stretch, with the widths of a straight one as strong: times cos^2 of its lean.
    struct Taper {
        Station start;
        Station end;
        double start_width_mm;
        double end_width_mm;
    };
    std::vector<Place> ahead;  ///< ends of stretches and places across holes
    std::vector<Taper> taper;
    std::vector<Place> rising{};  ///< those ahead that can be the worst; empty where not looked for
    Place behind{0.0, 0.0};       ///< worst place of the rear span, stress per root moment
    /// Of a spring that bears at both ends: the same of the rear span and of the other end.
    struct OtherEnd {
        std::vector<Place> between;
        std::vector<Taper> between_taper;
        std::vector<Place> beyond;        ///< stations from the pin there, towards the end
        std::vector<Taper> beyond_taper;  ///< likewise
        double span_mm = 0.0;             ///< between the pins, 0 with one
    };
    std::optional<OtherEnd> other_end{};
};

/// Finds the places once, so that the worst stress at every blade angle is cheap.
[[nodiscard]] StressProbe make_stress_probe(const Spring& spring);

/// The same for a spring that blades bear on at both ends.
[[nodiscard]] StressProbe with_other_end(StressProbe probe, const Spring& spring);

/// Largest nominal bending stress along the whole spring, both sides.
///
/// On a straight taper of thickness and width the worst place is found exactly; across holes it is
/// taken from close stations (within 0.02 % of the stress). The pull along a mid-line that leans,
/// under a hundredth of it, is left out.
///
/// @param loads  in rising order of their stations
[[nodiscard]] PeakStress peak_stress(const StressProbe& probe, std::span<const Load> loads);

}  // namespace backspring

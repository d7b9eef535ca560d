#pragma once

#include <array>
#include <limits>
#include <span>
#include <vector>

#include "backspring/spring/bending.hpp"

namespace backspring {

/// A bending moment that falls in a straight line along the spring.
struct StraightMoment {
    double root_nmm = 0.0;  ///< at the middle pin [N mm]
    double fall_n = 0.0;    ///< ahead of it, per mm [N]

    /// At a station [N mm].
    [[nodiscard]] double at_nmm(double x_mm) const { return root_nmm - fall_n * x_mm; }
};

/// The straight part of a moment that is the greatest from a station on.
struct MomentPart {
    StraightMoment moment;
    double from_mm = 0.0;  ///< station [mm]
    /// Station of the nearest of the loads that make it; beyond all where it was borne before [mm].
    double nearest_mm = std::numeric_limits<double>::infinity();
};

/// The greatest of straight moments, part by part from the middle pin on.
///
/// @param parts  in any order; where each begins is found
/// @source A. M. Andrew, Information Processing Letters 9 (1979), monotone chain
void keep_greatest(std::vector<MomentPart>& parts);

/// The moments of loads, which fall in straight lines from load to load: at each station the
/// greatest of them is the moment.
void add_moments(std::span<const Load> loads, std::vector<MomentPart>& parts);

[[nodiscard]] inline std::vector<MomentPart> moments_of(std::span<const Load> loads) {
    std::vector<MomentPart> parts;
    parts.reserve(loads.size());
    add_moments(loads, parts);
    return parts;
}

/// A span from one station to another [mm]; nothing where it ends before it begins.
struct Span {
    double from_mm = 0.0, to_mm = 0.0;
};

/// A stretch without a hole, as wide everywhere, whose thickness changes in a straight line, of
/// elastic, perfectly plastic steel.
struct PlasticTaper {
    double from_mm = 0.0, to_mm = 0.0;  ///< stations [mm]
    double thickness_mm = 0.0;          ///< at the first, square to the mid-line [mm]
    double taper = 0.0;                 ///< how fast it grows along the stations
    double width_mm = 0.0;              ///< across the liners [mm]
    double cosine = 1.0;                ///< of the mid-line's lean
    double youngs_modulus_mpa = 0.0;    ///< Young's modulus [MPa]
    double yield_mpa = 0.0;             ///< stress that goes no higher [MPa]

    [[nodiscard]] double thickness_at_mm(double x_mm) const {
        return thickness_mm + taper * (x_mm - from_mm);
    }
    /// Where the outer fibre begins to yield [N mm].
    [[nodiscard]] double yield_moment_nmm(double x_mm) const {
        const double depth = thickness_at_mm(x_mm);
        return yield_mpa * width_mm * depth * depth / 6.0;
    }

    /// Where a moment passes a share of the moment at which yielding begins.
    [[nodiscard]] Span beyond(const StraightMoment& moment, double share) const;

    /// The station where a moment is the largest share of that, ends aside; the first station if
    /// it is largest at an end.
    [[nodiscard]] double worst_mm(const StraightMoment& moment) const;
};

/// What stays of the turn of a span, and how fast that grows with moments.
struct SpanTurn {
    double middle_mm = 0.0;  ///< station that what follows is taken about [mm]
    double turn_rad = 0.0;   ///< lasting turn [rad]
    double first_mm = 0.0;   ///< its moment about the middle [mm]
    /// Growth of the turn with moments 1, x - middle and (x - middle)^2.
    std::array<double, 3> rates{};

    /// Adds another, about its own middle, to sums about station 0.
    void add_to(double& turn, double& about_root_mm) const {
        turn += turn_rad;
        about_root_mm += middle_mm * turn_rad + first_mm;
    }
};

/// What stays after a moment within a span of a taper in which it yields all along, in closed form.
///
/// Curvature is 2 sY/E over the root of 3 t^2 - 12 M/(sY b), a quadratic along the span, less what
/// comes back, 12 M/(E b t^3); both integrate to roots and a logarithm. A section near its plastic
/// moment turns as a hinge.
///
/// @source elastic, perfectly plastic bending; plane sections
[[nodiscard]] SpanTurn yielded_turn(const PlasticTaper& taper,
                                    const StraightMoment& moment,
                                    const Span& span);

/// The same of a span in which all sections turn as hinges.
[[nodiscard]] SpanTurn hinged_turn(const PlasticTaper& taper,
                                   const StraightMoment& moment,
                                   const Span& span);

}  // namespace backspring

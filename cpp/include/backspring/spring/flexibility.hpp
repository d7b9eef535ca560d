#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

#include "backspring/spring/spring.hpp"

namespace backspring {

/// Integrals from the middle pin to a station, the whole memory of the shape that bending needs.
struct BendingIntegrals {
    double a0 = 0.0;     ///< int ds/(E I) [1/(N mm)]
    double a1 = 0.0;     ///< int s ds/(E I) [1/N]
    double a2 = 0.0;     ///< int s^2 ds/(E I) [mm/N]
    double shear = 0.0;  ///< int ds/(kappa G A) [mm/N]
};

/// A stretch of the spring with straight faces, whole or pierced by one hole.
///
/// Width is told as a share of the spring's own, which the flexibility's factors hold.
struct Stretch {
    double start_mm;
    double end_mm;
    double thickness_mm;       ///< at the start
    double taper;              ///< thickness gained per mm
    Hole hole;                 ///< diameter 0 where whole
    BendingIntegrals upto;     ///< integrals from the middle pin to the start
    double width_share = 1.0;  ///< at the start
    double width_taper = 0.0;  ///< share gained per mm
    double cosine = 1.0;       ///< of the mid-line's lean
    double axial_share = 0.0;  ///< kappa G tan^2/E: how much pull along a lean adds to shear
};

/// The spring's deflection per force, reduced so that every question costs the same few operations.
struct Flexibility {
    std::vector<Stretch> stretches;          ///< ahead of the middle pin, rising
    double bending_factor = 0.0;             ///< 12 / (E b)
    double shear_factor = 0.0;               ///< 1 / (kappa G b)
    double root_rotation_rad_per_nmm = 0.0;  ///< R, rotation at the middle pin per moment

    /// Whether the spring only turns on the middle pin: one touch then leaves it no way to move.
    [[nodiscard]] bool rigid() const { return bending_factor == 0.0; }
};

/// Reduces a spring to its flexibility.
///
/// Straight stretches are integrated in closed form, pierced ones and those whose width varies by
/// quadrature to rounding error. Where the mid-line leans by alpha, ds = dx/cos(alpha) and the
/// thickness square to it t cos(alpha) make 1/(E I) as of a straight t cos^(4/3)(alpha); the force
/// square to x shears with its share cos(alpha) and stretches with sin(alpha).
/// Root: R = (1/L_r^2) [int (s + L_r)^2/(E I) ds + int ds/(kappa G A)] over the rear span for two
/// pins, 0 clamped, 1/k for a root stiffness k.
///
/// @source unit-load theorem; shear after Timoshenko, kappa = 5/6
/// @note   a mid-line's curvature itself (Winkler-Bach) stiffens by less than (t/r)^2/6
[[nodiscard]] Flexibility make_flexibility(const Spring& spring);

/// A stretch with the integrals over all of it, from its start, steel and width left out.
struct WholeStretch {
    Stretch stretch;
    BendingIntegrals shape;
};

/// Every stretch of a spring, integrated.
[[nodiscard]] std::vector<WholeStretch> whole_stretches(const Spring& spring);

/// make_flexibility() of a spring that differs in little from one whose stretches are known: those
/// that are alike are not integrated anew.
[[nodiscard]] Flexibility flexibility_from(std::span<const WholeStretch> known,
                                           const Spring& spring);

/// Rotation at one of two pins for a unit moment from the overhang beyond the other.
///
/// R_AB = (1/L^2) [int u (L - u)/(E I) ds - int ds/(kappa G A)] over the span L between the pins, u
/// from one of them; the same both ways. Moments that bend the ends outward and turns that lift
/// them are positive.
///
/// @param spring  with support by two pins
/// @returns       [rad/(N mm)]
/// @source unit-load theorem, Maxwell's reciprocity; shear after Timoshenko, kappa = 5/6
[[nodiscard]] double cross_rotation_rad_per_nmm(const Spring& spring);

/// A rigid spring that turns freely on the middle pin, as with the rear pin out.
[[nodiscard]] Flexibility free_rotation();

/// Integrals from the middle pin to a station; beyond the end the end's thickness goes on.
///
/// @param x_mm  station [mm], >= 0
/// @throws OutOfRange  behind the middle pin
[[nodiscard]] BendingIntegrals bending_integrals(const Flexibility& flexibility, double x_mm);

/// A station of the spring with all that bending knows of it: what is asked of it more than once.
struct BeamPlace {
    double x_mm;             ///< from the middle pin [mm]
    BendingIntegrals upto;   ///< to there
    double shear_rad_per_n;  ///< slope that a unit force beyond makes there by shear [rad/N]
};

/// @param x_mm  station [mm], >= 0
/// @throws OutOfRange  behind the middle pin
[[nodiscard]] BeamPlace beam_place(const Flexibility& flexibility, double x_mm);

/// What a unit force does at a place.
struct Compliance {
    double mm_per_n;   ///< deflection [mm/N]
    double rad_per_n;  ///< slope of the deflected face [rad/N]
};

/// Deflection and slope at x for a unit force at xi, with one look at the integrals.
///
/// @param x_mm   where it moves [mm], >= 0
/// @param xi_mm  where the force acts [mm], >= 0
/// @throws OutOfRange  behind the middle pin
/// @source unit-load theorem; shear after Timoshenko, kappa = 5/6
[[nodiscard]] Compliance compliance(const Flexibility& flexibility, double x_mm, double xi_mm);

/// The same between two known places: where it moves, and where the force acts.
[[nodiscard]] Compliance compliance(const Flexibility& flexibility,
                                    const BeamPlace& moves,
                                    const BeamPlace& pressed);

/// The same of a known place that moves.
///
/// @param xi_mm  where the force acts [mm], >= 0
[[nodiscard]] Compliance compliance(const Flexibility& flexibility,
                                    const BeamPlace& moves,
                                    double xi_mm);

/// What a unit force does at its own place, and how fast that changes with the place.
struct OwnCompliance {
    double mm_per_n;     ///< deflection; it grows by twice the slope [mm/N]
    double rad_per_n;    ///< mean slope of the deflected face [rad/N]
    double rad_per_nmm;  ///< by how much the slope grows per mm [rad/(N mm)]
    double from_mm;      ///< begin of the stations over which all of it is smooth [mm]
    double to_mm;        ///< their end; the begin where the growth of the slope is not known [mm]
};

/// compliance() of a place to itself, as a step of Newton's method needs it.
///
/// @param x_mm  station [mm], >= 0
/// @throws OutOfRange  behind the middle pin
/// @source unit-load theorem; shear after Timoshenko, kappa = 5/6
[[nodiscard]] OwnCompliance own_compliance(const Flexibility& flexibility, double x_mm);

/// own_compliance() at several stations of one stretch over which all of it is smooth.
struct OwnCompliances {
    static constexpr std::size_t kMost = 16;
    using Numbers = std::array<double, kMost>;

    Numbers mm_per_n, rad_per_n, rad_per_nmm;  ///< see OwnCompliance; one for each station
    double from_mm, to_mm;                     ///< ends of the stretch [mm]
};

/// The same of the stretch on which the station in the middle lies.
///
/// @param x_mm  stations [mm], at most OwnCompliances::kMost; those beyond the stretch are as if it
///              went on
/// @returns     false at a hole, where the width varies, or where the taper is steep
[[nodiscard]] bool own_compliances(const Flexibility& flexibility,
                                   std::span<const double> x_mm,
                                   OwnCompliances& own);

/// Deflection at x for a unit force at xi, both ahead of the middle pin.
///
/// C = x xi A0 - (x + xi) A1 + A2 + S + x xi R, integrals taken to min(x, xi).
///
/// @param x_mm   where it moves [mm], >= 0
/// @param xi_mm  where the force acts [mm], >= 0
/// @returns      [mm/N]
/// @throws OutOfRange  behind the middle pin
/// @source unit-load theorem; shear after Timoshenko, kappa = 5/6
[[nodiscard]] double deflection_per_force(const Flexibility& flexibility,
                                          double x_mm,
                                          double xi_mm);

/// Slope of the deflected face at x for a unit force at xi.
///
/// Shear makes the slope jump under the force; there it is the mean of both sides.
///
/// @param x_mm   where the slope is taken [mm], >= 0
/// @param xi_mm  where the force acts [mm], >= 0
/// @returns      [rad/N]
/// @throws OutOfRange  behind the middle pin
/// @source unit-load theorem; shear after Timoshenko, kappa = 5/6
[[nodiscard]] double slope_per_force(const Flexibility& flexibility, double x_mm, double xi_mm);

}  // namespace backspring

#pragma once

#include "backspring/spring/flexibility.hpp"
#include "backspring/spring/frame.hpp"

namespace backspring {

/// How the pin next to one end of the spring lifts and turns under the forces of that end, seen
/// from the pivot, because the frame gives.
///
/// A force P at x lifts it by P (lift + x turn) and turns it by P (turn + x turn_per_moment).
struct RootGive {
    double lift_mm_per_n = 0.0;            ///< lift per force [mm/N]
    double turn_rad_per_n = 0.0;           ///< turn per force, lift per moment [rad/N]
    double turn_per_moment_per_nmm = 0.0;  ///< turn per moment [rad/(N mm)]
};

/// What the forces of one end do to the pin next to the other, through the frame alone.
struct RootCross {
    double lift_mm_per_n = 0.0;     ///< lift of either root per force at the other end [mm/N]
    double lift_mm_per_nmm = 0.0;   ///< lift of this root per moment of the other end [1/N]
    double turn_rad_per_n = 0.0;    ///< turn of this root per force at the other end [rad/N]
    double turn_rad_per_nmm = 0.0;  ///< turn of either root per moment of the other end
};

/// The front end's, with the pin behind it at a span.
///
/// With v = (1 + x/L, -x/L) the forces on middle and rear pin for a unit force at x and K the
/// frame's give at both: v' K v + give of the pivot, a rank-one term for each pin.
///
/// @param span_mm  middle pin to rear pin, L [mm]
/// @source statics; Castigliano's theorem
[[nodiscard]] RootGive root_give(const FrameGive& give, double span_mm);

/// The same of the rear end.
[[nodiscard]] RootGive far_root_give(const FrameGive& give, double span_mm);

/// What the rear end's forces do to the front root; seen from the rear end lift per moment and turn
/// per force change places.
///
/// @source Maxwell's reciprocity
[[nodiscard]] RootCross root_cross(const FrameGive& give, double span_mm);

/// The spring on a root that gives: every deflection and slope has it from here on.
///
/// C(x, xi) gains lift + (x + xi) turn + x xi turn_per_moment.
[[nodiscard]] Flexibility with_root_give(Flexibility flexibility, const RootGive& give);

}  // namespace backspring

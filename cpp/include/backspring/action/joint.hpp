#pragma once

#include "backspring/action/fit.hpp"
#include "backspring/spring/flexibility.hpp"
#include "backspring/tang/outline.hpp"

namespace backspring {

/// Spring and tang put together: all that contact needs.
struct Joint {
    Flexibility flexibility;  ///< deflection per force
    Outline outline;          ///< the tang
    Pad pad;                  ///< the face that can touch
    double pivot_mm;          ///< middle pin to pivot [mm]
    double dial_mm;           ///< station of the indicator [mm]
    double face_mm;           ///< free working face above the pivot's height at the middle pin [mm]
    double face_slope;        ///< its slope, y_f = face + slope x
    double open_mm;           ///< where the pad lies at open when fitted, above the pivot
};

/// The joint with its pins in: the free face leans in by the preload, less what clearances take.
///
/// y_f(x) = d_o - delta x / a_p, with clearances moved as with_clearances() says.
[[nodiscard]] Joint make_joint(const Spring& spring,
                               const Pad& pad,
                               const Tang& tang,
                               const Fit& fit);

/// The joint with the rear pin out: the spring lies on the tang under a vanishing force.
///
/// A rigid spring that turns on the middle pin; its rotation from the open fit is what the forces
/// of this joint stand for, so only deflections and signs of torque mean anything. It lies on the
/// one place of the tang that turns it farthest: nothing is left to bend towards a second.
[[nodiscard]] Joint make_unloaded_joint(const Pad& pad, const Tang& tang, const Fit& fit);

/// The joint under load, which takes up the clearance of every pin on one side.
///
/// The middle hole goes outward by c_m/2, the rear end inward by c_r/2 and the tang inward by
/// c_p/2, so the free face stands nearer to the back: y_f(x) grows by
/// c_m/2 + (c_m/2 + c_r/2) x/L_r + c_p/2. At the pivot that is the preload lost.
///
/// @note  rear and middle pin count with two pins only
[[nodiscard]] Joint with_clearances(Joint joint, const Spring& spring, const Tang& tang);

/// Preload that clearances take under load, at the pivot station [mm].
[[nodiscard]] double preload_lost_mm(const Spring& spring, const Tang& tang);

/// Joint of a rigid tang on a given flexibility, for studies of their own; without clearances.
[[nodiscard]] Joint make_joint(Flexibility flexibility,
                               const Pad& pad,
                               const Tang& tang,
                               const Fit& fit);

}  // namespace backspring

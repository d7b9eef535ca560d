#pragma once

#include <optional>
#include <vector>

#include "backspring/action/fit.hpp"
#include "backspring/spring/axial_push.hpp"
#include "backspring/spring/root_give.hpp"
#include "backspring/tang/outline.hpp"

namespace backspring {

/// How another blade stands: held at an angle, or free to seat within reach of it.
struct Standing {
    double blade_angle_deg = 0.0;  ///< [deg]
    double reach_deg = 0.0;        ///< 0: held [deg]
};

/// A tang over its end of the spring. Stations are from the pin next to it, + towards its pivot.
struct Mounted {
    Outline outline;          ///< the tang
    Pad pad;                  ///< the face that can touch
    double pivot_mm = 0.0;    ///< pin to pivot [mm]
    double face_mm = 0.0;     ///< free working face above the pivot's height at the pin [mm]
    double face_slope = 0.0;  ///< its slope, y_f = face + slope x
};

/// Another blade on the same spring while one is turned.
struct Neighbour {
    Mounted tang;
    Standing standing;
    double seat_mm = 0.0;   ///< pivot to the face it seats on; 0 where held, or on a kick [mm]
    double seat_deg = 0.0;  ///< about where it seats on a kick [deg]
};

/// The other end of a spring, with the blades there.
///
/// Two pins: the moment of either overhang, M = sum P x, turns the other's root by the cross
/// rotation. One pin: the spring turns on it until both ends give the same moment.
struct FarEnd {
    Flexibility flexibility;         ///< of that overhang, its root at the pin next to it
    std::vector<Neighbour> blades;   ///< at least one
    bool turns = false;              ///< one pin between the ends, on which the spring turns
    double cross_rad_per_nmm = 0.0;  ///< two pins: turn of one root per moment at the other
    double span_mm = 0.0;            ///< between the pins, 0 with one [mm]
    /// What passes through a frame that gives; its turn per moment is in the cross rotation.
    std::optional<RootCross> through_frame = {};
};

/// A frame that gives, under a joint.
struct JointFrame {
    FrameGive give;        ///< at the pins
    double span_mm = 0.0;  ///< middle pin to rear pin [mm]
};

/// The stop of the open blade on the spring's end.
struct EndStop {
    AxialPush push;                      ///< of its force along the spring
    double height_mm = 0.0;              ///< where it bears, above the pivot [mm]
    double friction = 0.0;               ///< share of its force across the end, + outward
    std::optional<double> face_mm = {};  ///< of the blade's stop, ahead of the pivot [mm]
    double end_mm = 0.0;   ///< where the end bears before it is bent, ahead of the pivot [mm]
    double lean = 0.0;     ///< of that face, the blade open, from square to the spring
    double bent_mm = 0.0;  ///< how far outward the open blade bends the end [mm]

    /// Share of its force across the end, + outward: it presses square to its face.
    [[nodiscard]] double across() const { return friction - lean; }
};

/// Spring and tang put together: all that contact needs.
struct Joint : Mounted {
    Flexibility flexibility;               ///< deflection per force
    double dial_mm = 0.0;                  ///< station of the indicator [mm]
    double open_mm = 0.0;                  ///< where the pad lies at open, fitted, above the pivot
    std::vector<Neighbour> beside = {};    ///< other blades at this end of the spring
    std::optional<FarEnd> far_end = {};    ///< the other end, if a blade is there
    std::optional<EndStop> stop = {};      ///< of the own blade; none: its force is left out
    double open_deg = 180.0;               ///< where the blade stands open [deg]
    std::optional<JointFrame> frame = {};  ///< what the back is read against; none where rigid

    /// Whether the blade is the only one on its spring.
    [[nodiscard]] bool alone() const { return beside.empty() && !far_end; }
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

/// A joint's pad and tang as they are, without a stop, on a spring that is fitted to them.
[[nodiscard]] Joint on_other_spring(
    Joint joint, Flexibility flexibility, const Spring& spring, const Tang& tang, const Fit& fit);

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

/// The joint in a frame that gives: its pins go with the liners.
[[nodiscard]] Joint with_frame(Joint joint, const JointFrame& frame);

/// Joint of a rigid tang on a given flexibility, for studies of their own; without clearances.
[[nodiscard]] Joint make_joint(Flexibility flexibility,
                               const Pad& pad,
                               const Tang& tang,
                               const Fit& fit);

}  // namespace backspring

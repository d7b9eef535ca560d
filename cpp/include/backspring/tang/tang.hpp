#pragma once

#include <optional>
#include <vector>

namespace backspring {

/// The nose on the closed side that sets how deep the blade sits.
struct Kick {
    double distance_mm = 0.0;  ///< nose ahead of the pivot, blade open [mm]
    double height_mm = 0.0;    ///< nose beyond the closed face [mm]
    double radius_mm = 0.0;    ///< of the nose [mm]
};

/// A corner of a drawn outline, and the way on from it to the next: straight, or an arc.
struct OutlinePoint {
    double u_mm = 0.0;   ///< ahead of the pivot, blade open, along the spring [mm]
    double w_mm = 0.0;   ///< outward of the pivot [mm]
    double bulge = 0.0;  ///< tangent of a quarter of the arc's angle, 0 for a straight line
};

/// The blade's tang: pivot centre to each working face, and its corners.
///
/// Or an outline of any convex shape. Its faces are then cut from it as a grinder would: each
/// distance says how much is left of it, an edge stands where the cut ends. See
/// tang_with_outline().
struct Tang {
    double pivot_mm = 0.0;                ///< middle pin to pivot, along the spring [mm]
    double open_mm = 0.0;                 ///< pivot to the open face [mm]
    std::optional<double> half_stop_mm;   ///< pivot to the half-stop face; none: round end [mm]
    double closed_mm = 0.0;               ///< pivot to the closed face [mm]
    double corner_open_mm = 0.0;          ///< radius of the corner behind the open face [mm]
    double corner_closed_mm = 0.0;        ///< radius of the corner behind the closed face [mm]
    double front_mm = 0.0;                ///< open face's reach ahead of the pivot [mm]
    std::optional<double> round_end_mm;   ///< pivot to a round end; none: from the corners [mm]
    std::optional<Kick> kick;             ///< nose on the closed side
    double pivot_clearance_mm = 0.0;      ///< bushing or hole less pivot pin, across [mm]
    std::vector<OutlinePoint> outline{};  ///< drawn shape, convex, counterclockwise, without its
                                          ///< kick; empty: from faces and corners
};

/// Radius about the pivot of a round end.
///
/// As given, or else the circle that touches from outside the corners a square end would have at
/// (open + closed)/2 behind the pivot: max over both of hypot(h - r, d - r) + r.
///
/// @returns  [mm]
[[nodiscard]] double round_end_radius_mm(const Tang& tang);

/// How far the tang reaches behind the pivot when the blade is open.
///
/// @returns  [mm]
[[nodiscard]] double rear_reach_mm(const Tang& tang);

/// How far the open side reaches ahead of the pivot when the blade is open.
///
/// @returns  [mm]
[[nodiscard]] double front_reach_mm(const Tang& tang);

}  // namespace backspring

#pragma once

#include <optional>
#include <span>
#include <vector>

#include "backspring/tang/outline.hpp"

namespace backspring {

/// A side of an outline on which a blade can rest: a flat, or an arc twice as flat as one about the
/// pivot.
struct RestingSide {
    double normal_rad;       ///< outward, from +u towards +w [rad]
    double distance_mm;      ///< from the pivot square to it [mm]
    double length_mm;        ///< [mm]
    double blade_angle_deg;  ///< where it lies along the spring [deg]
};

/// What keeps rows from being the outline of a tang.
enum class OutlineFlaw {
    none,           ///< it is an outline
    too_few,        ///< fewer than three corners
    not_convex,     ///< a hollow, a crossing, or clockwise
    pivot_outside,  ///< the pivot is not inside
};

/// The first flaw of a drawn outline.
[[nodiscard]] OutlineFlaw flaw_of(std::span<const OutlinePoint> outline);

/// Arcs of a drawn outline, in the order of their normals from 0 to 2 pi; a corner is an arc of
/// radius 0. A corner that turns by less than 1e-6 rad is a smooth passage.
///
/// @param outline  without a flaw
[[nodiscard]] std::vector<Arc> arcs_of(std::span<const OutlinePoint> outline);

/// The sides of at least half a millimetre, in the order of their normals. An arc counts where its
/// normal passes through the pivot.
[[nodiscard]] std::vector<RestingSide> sides_of(std::span<const Arc> arcs);

/// How far an outline reaches in a direction.
///
/// @returns  [mm]
[[nodiscard]] double reach_mm(std::span<const Arc> arcs, double normal_rad);

/// The faces of a drawn outline, before anything is ground off.
///
/// The pad lies along the outline when the blade is open, so the open face is square. A side that
/// lies along the spring within 15 degrees of 90 or 0 is the half-stop or the closed face. Without
/// one there is no half-stop, and closed is how far the outline reaches there.
struct DrawnFaces {
    double open_mm = 0.0;                ///< pivot to the open face [mm]
    std::optional<double> half_stop_mm;  ///< pivot to the half-stop face [mm]
    double closed_mm = 0.0;              ///< pivot to the closed face [mm]
    double end_rad = 0.0;                ///< normal of the half-stop face; pi without one [rad]
    double closed_rad = 0.0;             ///< normal of the closed face [rad]
    std::vector<RestingSide> others;     ///< sides behind that are none of them
};

/// Finds the faces of an outline.
[[nodiscard]] DrawnFaces faces_of(std::span<const Arc> arcs);

/// A tang of a drawn outline with the faces it has.
///
/// @param tang     with pivot, kick and clearance; everything else is taken from the outline
/// @param outline  without a flaw
[[nodiscard]] Tang tang_with_outline(Tang tang, std::vector<OutlinePoint> outline);

}  // namespace backspring

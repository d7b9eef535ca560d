#pragma once

#include <numbers>
#include <optional>
#include <vector>

#include "backspring/tang/tang.hpp"

namespace backspring {

/// An arc of the tang's outline; radius 0 is a sharp edge.
///
/// Coordinates are fixed to the blade, origin at the pivot; open, u runs along the spring and w
/// outward. An arc reaches over all directions of its outward normal between two angles.
struct Arc {
    double u_mm;       ///< centre along [mm]
    double w_mm;       ///< centre outward [mm]
    double radius_mm;  ///< [mm]
    double from_rad;   ///< first normal direction, from +u towards +w [rad]
    double to_rad;     ///< last normal direction [rad]
};

/// The tang's outline: arcs in turn with flats between their ends, and a kick standing proud of it.
///
/// The body is convex, so each direction of the normal belongs to one arc or one flat.
struct Outline {
    std::vector<Arc> body;  ///< from the open face's front edge round the rear to the closed face's
    std::optional<Arc> kick;                     ///< nose of the kick
    double end_rad = std::numbers::pi;           ///< normal of the half-stop face [rad]
    double closed_rad = 1.5 * std::numbers::pi;  ///< normal of the closed face [rad]
};

/// Outline of a tang.
///
/// With a half-stop: open, half-stop and closed faces with both rear corners rounded. Without: a
/// disc about the pivot cut by the open and closed faces, corners rounded from inside. Or the
/// tang's own outline, cut by its faces; where that ends ahead at the closed face's front end, the
/// blade goes on in line with the face.
///
/// @param tang      checked by the design's rules
/// @param reach_mm  how far the closed face goes ahead of the pivot [mm]
[[nodiscard]] Outline make_outline(const Tang& tang, double reach_mm);

/// Largest distance of the rear outline or the kick from the pivot.
///
/// @returns  [mm]
[[nodiscard]] double swept_radius_mm(const Outline& outline);

}  // namespace backspring

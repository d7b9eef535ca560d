#pragma once

#include <numbers>
#include <vector>

#include "backspring/tang/outline.hpp"

namespace backspring::detail {

inline constexpr double kPi = std::numbers::pi;

/// Direction of a normal, and how far places reach along it.
struct Direction2 {
    double u;
    double w;

    explicit Direction2(double normal_rad);

    [[nodiscard]] double reach_mm(double u_mm, double w_mm) const { return u * u_mm + w * w_mm; }
};

/// The place of an arc with a normal, as a sharp edge.
[[nodiscard]] Arc edge_on(const Arc& arc, double normal_rad);

/// The same convex outline, its normals from another start on, over one turn.
[[nodiscard]] std::vector<Arc> started_at(const std::vector<Arc>& arcs, double start_rad);

/// A convex outline with its face in a direction at a distance from the pivot.
///
/// Nearer than it reaches, the outline is cut along a line. Farther, its flat, its crowned
/// side or the corner that reaches farthest stands out on its own, with straight flanks from its
/// ends to the outline. Both ends of the face are edges, so that the count of arcs is the same on
/// both sides of drawn.
///
/// @param arcs        of a whole turn, the pivot inside
/// @param normal_rad  [rad]
/// @param distance_mm > 0 [mm]
[[nodiscard]] std::vector<Arc> with_face(const std::vector<Arc>& arcs,
                                         double normal_rad,
                                         double distance_mm);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

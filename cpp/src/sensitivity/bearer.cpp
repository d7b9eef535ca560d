#include "bearer.hpp"

namespace backspring {

Bearer detail::bearer_of(const Joint& joint, const Touch& touch) {
    const std::vector<Arc>& arcs = joint.outline.body;
    Bearer bearer;
    bearer.arc = touch.part.kick ? static_cast<int>(arcs.size()) : touch.part.arc;
    if (touch.part.flat) bearer.normal_rad = arcs[static_cast<std::size_t>(bearer.arc)].to_rad;
    // A sharp corner at an edge of the pad bears as a corner: an edge has nowhere to slide on it.
    const bool round = touch.part.kick || touch.part.flat ||
                       arcs[static_cast<std::size_t>(bearer.arc)].radius_mm > 0.0;
    if (!round) return bearer;
    if (touch.x_mm == joint.pad.start_mm) bearer.hold = Hold::pad_start;
    if (touch.x_mm == joint.pad.end_mm) bearer.hold = Hold::pad_end;
    return bearer;
}

}  // namespace backspring

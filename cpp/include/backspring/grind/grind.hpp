#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backspring/design/design.hpp"

namespace backspring {

/// Where steel is taken off the spring.
enum class GrindFace {
    back,   ///< the outside: thickness falls, working face and preload stay
    belly,  ///< the inside behind the pad: as the back, only holes come nearer the other side
    pad,    ///< the working face itself: preload falls with it
};

/// A stretch of the spring.
struct GrindRegion {
    double from_mm = 0.0;  ///< rear end [mm]
    double to_mm = 0.0;    ///< front end [mm]
};

/// One cut: a depth off one face.
struct Cut {
    GrindFace face = GrindFace::back;   ///< which face
    double depth_mm = 0.0;              ///< taken off [mm]
    std::optional<GrindRegion> region;  ///< where; none: the whole face, see whole_face()
};

/// Where a face is ground when nobody says where.
///
/// Back: the whole spring, behind the middle pin too, to the far end of a spring with a blade
/// there. Belly: middle pin to the pad. Pad: the pad, with those of the blades on the same pin.
[[nodiscard]] GrindRegion whole_face(const Design& design, GrindFace face);

/// What ends a cut.
enum class GrindEnd {
    no_steel,      ///< less is left of the spring than a design may have
    hole_opens,    ///< a pin hole breaks out
    preload_used,  ///< the pad no longer meets the tang
};

/// What stops a cut at a depth.
struct GrindLimit {
    double depth_mm = 0.0;              ///< [mm]
    GrindEnd end = GrindEnd::no_steel;  ///< what ends there
    double hole_mm = 0.0;               ///< station of the hole that opens [mm]
    bool allowed = false;               ///< the depth itself can still be cut
};

/// All that limits the depth of a cut, the nearest first.
///
/// @throws InvalidInput  a region off the face
[[nodiscard]] std::vector<GrindLimit> grind_limits(const Design& design,
                                                   GrindFace face,
                                                   const std::optional<GrindRegion>& region);

/// The design after a cut.
///
/// Thickness is given about a working face that is straight, so a cut of the back or the belly
/// changes only the thickness: even depth, a step at each end of the region that lies within the
/// spring. Over a pin hole the mid-line moves by half the depth, so the hole's offset changes by
/// +depth/2 (back) or -depth/2 (belly): the hole stays where it is.
///
/// The pad is ground so that it lies flat on the open face again with the rear pin out. Its new
/// plane is then turned about the middle pin: depth x/a_p at station x, which is `depth` at the
/// pivot station a_p. Preload falls by `depth`, so that with both pins in the back of the free
/// spring, face + thickness, stays where it was: exact, not an estimate.
///
/// @throws InvalidInput  with every fault: depth, region, no steel left, a hole opened, no preload
/// @source geometry, small slopes
/// @note  a region that ends inside a pin hole moves the whole hole's offset: exact for the part
///        that is ground, which is the thinner; 0.2 mm at the Heron's middle pin puts stiffness off
///        by 0.02 %
/// @note  the pad of blades side by side on one pin is ground over the whole width: the preload of
///        each falls
/// @note  an even pass over the pad leaves it out of flat by depth/a_p (0.003 rad for 0.1 mm at
///        32 mm), and the preload at station x falls by depth instead of depth x/a_p
[[nodiscard]] Design grind(const Design& design, const Cut& cut);

}  // namespace backspring

#pragma once

#include "removal.hpp"

namespace backspring::detail {

/// What comes off for readings and tip together.
struct TipRemoval {
    FaceDepths depths;                 ///< in all
    std::optional<TangFace> runs_out;  ///< the face for which the tip ends elsewhere
};

/// Whether a kick carries the closed blade, so that kick and closed face move the tip against each
/// other.
[[nodiscard]] bool kick_sets_tip(const PlanSubject& subject);

/// The least that has to come off each face so that the readings end at the aim and the tip moves
/// as wanted; where that cannot be, the readings count and the tip comes as near as it can.
///
/// Half-stop and closed reading and the tip leave one choice of half-stop face, closed face and
/// kick. The open face is ground for a reading that is low; for the tip only as far as the maker
/// says it may, for that costs preload.
///
/// @param move_mm  of the tip, + out of the handle [mm]
/// @throws NoConvergence  a face's steel runs out before the readings are met
[[nodiscard]] TipRemoval tip_removal(const PlanSubject& subject, double move_mm);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include <optional>

#include "backspring/action/joint.hpp"

namespace backspring {

/// Reading of the spring with its rear pin out, lying on a face of the tang that the blade has
/// turned under it: a straight line through the middle pin, as far from the pivot as the face.
///
/// Closed form of what rest_near() and readings() find there, for its speed.
///
/// @param unloaded     see make_unloaded_joint()
/// @param nominal_deg  0 closed, 90 half-stop
/// @param face_mm      pivot to that face
/// @returns            nothing when the spring comes to rest on something else
[[nodiscard]] std::optional<double> flat_reading_mm(const Joint& unloaded,
                                                    double nominal_deg,
                                                    double face_mm);

}  // namespace backspring

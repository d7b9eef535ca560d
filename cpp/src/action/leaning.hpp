#pragma once

#include "backspring/action/joint.hpp"

namespace backspring::detail {

/// Force of the stop on which a blade alone leans with one touch: what the tang's torque asks of it
/// [N].
[[nodiscard]] double leaning_n(const Joint& joint, double blade_angle_deg, double lever_mm);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

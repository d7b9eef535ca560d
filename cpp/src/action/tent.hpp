#pragma once

#include "backspring/spring/flexibility.hpp"

namespace backspring::detail {

/// compliance() between places where two blades press, side by side.
///
/// Under a point force shear makes a tent of the face. Pressure is spread over some length, and the
/// tent is round within a twentieth of the thickness, which is our choice and has no source: so two
/// blades that press in one place share their force by how high each stands, and what bears goes on
/// smoothly with all angles.
[[nodiscard]] Compliance beside_compliance(const Flexibility& flexibility,
                                           const BeamPlace& moves,
                                           const BeamPlace& pressed);

/// How fast the tent's slope turns under its round top, by what shear gives up to either place.
[[nodiscard]] double tent_rate(const Flexibility& flexibility,
                               const BeamPlace& moves,
                               const BeamPlace& pressed);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include <vector>

#include "indenters.hpp"

namespace backspring::detail {

/// Moves all places at once, by Newton's method, until outlines and bent face run along each other.
///
/// Each stays on its arc, its flat or its edge of the pad.
///
/// @returns  false, and nothing moved, where that leads off a part or a force would pull
bool move_together(const Flexibility& flexibility, std::vector<Borne>& borne);

/// Curvature of the beam per moment there [1/(N mm2)].
[[nodiscard]] double curvature_per_nmm(const Flexibility& flexibility, double x_mm);

/// How the beam goes on along the spring at a place.
struct PlaceRates {
    double curvature_per_nmm = 0.0;  ///< bending per moment [1/(N mm2)]
    double shear_rad_per_nmm = 0.0;  ///< growth of the slope by shear, beside holes [1/(N mm)]
};

[[nodiscard]] PlaceRates place_rates(const Flexibility& flexibility, const BeamPlace& place);

/// How far at most shear lets the face dip at a station below the slope it has under a force near
/// by.
///
/// Along a flat the force spreads over about half a thickness and there is no dip: a flat of
/// another blade that reaches no deeper beside it does not touch.
[[nodiscard]] double shear_dip_mm(const Flexibility& flexibility,
                                  double x_mm,
                                  double force_n,
                                  double at_mm);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

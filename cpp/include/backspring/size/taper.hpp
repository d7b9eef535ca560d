#pragma once

#include "backspring/design/design.hpp"

namespace backspring {

/// A thickness profile proposed for a pull.
struct Taper {
    Design design;                 ///< with the profile put in
    double pull_n = 0.0;           ///< peak pull, opening, as wanted [N]
    double peak_stress_mpa = 0.0;  ///< worst of the travel [MPa]
    double yield_margin = 0.0;     ///< at the worst of the travel
    double even_stress_mpa = 0.0;  ///< nominal stress where no limit holds the thickness up [MPa]
};

/// The thickness with the least peak stress that gives a pull, all else as it is.
///
/// For a given force and deflection the compliance is given; of all shapes that have it, the one
/// with one stress all along has the least greatest stress. So each station gets the thickness at
/// which the largest moment it sees while the blade turns makes one and the same stress: as the
/// root of the distance from the load where the section is whole, thicker across a pin hole. A
/// least thickness holds it up, before all along the pad. The common stress is then the one that
/// gives the pull.
///
/// @param pull_n              peak pull, opening [N]
/// @param least_thickness_mm  nowhere thinner [mm]
/// @param stations            between middle pin and pad, 2 to 200; as many behind the middle pin
/// @throws InvalidInput  a broken rule; no nail nick
/// @throws NoConvergence  no shape between the limits gives the pull
/// @source constant-strength beam; weakest-compliance argument as above
/// @note  the profile is straight between its stations, so the stress between them is a little
///        higher than at them: by (spacing / 4 distance from the load)^2 / 2 or so
[[nodiscard]] Taper propose_taper(const Design& design,
                                  double pull_n,
                                  double least_thickness_mm,
                                  int stations = 12);

}  // namespace backspring

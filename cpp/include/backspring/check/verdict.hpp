#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backspring/action/rest.hpp"
#include "backspring/action/stroke.hpp"
#include "backspring/design/design.hpp"

namespace backspring {

/// One way in which a spring can fail, and how far it is from it.
struct Margin {
    std::string name;                       ///< short and fixed, as "yield" or "fatigue"
    double value = 0.0;                     ///< what the design does, in `unit`
    double limit = 0.0;                     ///< what it may do, in `unit`
    std::string unit;                       ///< "MPa", "mm", "HRC"
    std::optional<double> margin;           ///< limit over value; none where nothing is asked of it
    std::optional<double> margin_low;       ///< with the bands at their unkind ends
    std::optional<double> station_mm;       ///< where on the spring [mm]
    std::optional<double> blade_angle_deg;  ///< at which blade angle [deg]
    std::vector<std::string> sources;       ///< keys of what the limit rests on
    std::string sentence;                   ///< for the bench
};

/// What a verdict looks at, worked out before.
struct Worked {
    const Action& action;
    const std::vector<Step>& steps;  ///< a sweep over the travel, from closed on
    const Rests& rests;
    const std::vector<Stroke>& strokes;  ///< opening, in turn
    const Contact& worst;                ///< where the bending stress is largest
};

/// Every way in which a design can fail that its data allow to judge, least margin first.
///
/// Yield and set, local stress at pin holes and kinks, fatigue, pressure of corner and kick on the
/// pad, galling, pins and liners, and the edge's rap. What a design leaves out is not judged.
[[nodiscard]] std::vector<Margin> verdict(const Design& design, const Worked& worked);

}  // namespace backspring

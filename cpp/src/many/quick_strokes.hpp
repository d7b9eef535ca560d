#pragma once

#include <optional>

#include "lazy_travel.hpp"

namespace backspring {

/// What the hand feels between two rests, opening.
struct QuickStroke {
    double peak_torque_nmm;
    std::optional<double> crest_deg;  ///< none: the spring has let go
    double snap_energy_mj;            ///< only when asked for
};

/// The same numbers as make_stroke(), from fewer turns.
[[nodiscard]] QuickStroke quick_stroke(LazyStroke& way, bool with_snap);

/// Largest stress of a travel, and the blade angle.
struct QuickStress {
    PeakStress peak;
    double angle_deg;
};

[[nodiscard]] QuickStress quick_stress(LazyTravel& travel);

}  // namespace backspring

#pragma once

#include <optional>

#include "backspring/action/rest.hpp"

namespace backspring {

/// What the dial indicator shows on the back relative to open, proud positive.
struct Readings {
    std::optional<double> closed_mm;     ///< [mm]
    std::optional<double> half_stop_mm;  ///< [mm]
    double open_mm = 0.0;  ///< nothing but where another blade on the spring is not open [mm]
};

/// Readings at the dial's station from the positions of one joint; its zero is where the dial
/// stands with every blade open.
///
/// @param joint  with its pins in for loaded readings, rear pin out for unloaded ones
[[nodiscard]] Readings readings(const Joint& joint, const Rests& rests);

}  // namespace backspring

#pragma once

namespace backspring {

/// How spring and tang are fitted to each other.
struct Fit {
    double preload_mm = 0.0;  ///< interference at the pivot station with both pins in [mm]
    double dial_mm = 0.0;     ///< station the indicator touches [mm]
};

}  // namespace backspring

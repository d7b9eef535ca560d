#pragma once

#include <optional>

#include "backspring/check/solution.hpp"

namespace backspring {

/// Least and greatest of a number.
struct Ends {
    double low = 0.0;   ///< least
    double high = 0.0;  ///< greatest
};

/// What is not known of the stop that the open blade leans on, and what that makes of the readings,
/// whose zero is the open blade.
///
/// Where the design does not say where it bears: from back to belly. Friction there is that
/// of the tang on the spring, either way. Where the stop's face is not given the blade stands at
/// 180 deg, or the face lies where the end met it with the rear pin out, and the blade turns a
/// little as the end leans. Other blades on the spring stand as they do.
struct StopBand {
    StopPlace place = StopPlace::unstated;  ///< as the design states it
    bool face_stated = false;               ///< whether the stop's face is given
    double friction = 0.0;                  ///< coefficient taken
    Ends stop_n;                            ///< force of the stop on the spring's end [N]
    Ends force_n;                           ///< of the tang on the spring, blade open [N]
    Ends blade_angle_deg;                   ///< where the blade stands open [deg]
    Ends reading_mm;                        ///< to add to every loaded reading [mm]
};

/// Works it out; nothing for a blade that the spring does not press on beyond open.
[[nodiscard]] std::optional<StopBand> stop_band(Solution& solution);

}  // namespace backspring

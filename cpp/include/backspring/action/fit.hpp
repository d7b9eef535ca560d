#pragma once

#include <optional>

namespace backspring {

/// Where on the spring's end the stop of the open blade bears.
enum class StopPlace {
    unstated,  ///< not known: its force is left out
    back,      ///< the end's edge at the back
    middle,    ///< half-way
    belly,     ///< the end's edge at the belly
    height,    ///< at a height above the belly
};

/// The blade's stop, which meets the spring's end when the blade is open.
struct Stop {
    StopPlace place = StopPlace::unstated;  ///< where it bears
    double height_mm = 0.0;                 ///< above the belly, for a place by height [mm]
    /// From the pivot ahead to the stop's face, square to the open face; none: the blade stands at
    /// 180 deg [mm]
    std::optional<double> face_mm = {};
    double friction = 0.0;  ///< share of its force that drags the end outward; below 0 inward
};

/// How spring and tang are fitted to each other.
struct Fit {
    double preload_mm = 0.0;  ///< interference at the pivot station with both pins in [mm]
    double dial_mm = 0.0;     ///< station the indicator touches [mm]
    Stop stop = {};           ///< what the open blade leans on
};

}  // namespace backspring

#pragma once

#include <optional>

#include "backspring/action/lazy_stroke.hpp"

namespace backspring {

/// The way from one position to the next, opening.
struct Stroke {
    double from_deg = 0.0;               ///< rest it starts from [deg]
    double to_deg = 0.0;                 ///< rest it ends in [deg]
    double start_torque_nmm = 0.0;       ///< to break away from the rest [N mm]
    double peak_torque_nmm = 0.0;        ///< largest against opening, friction included [N mm]
    double peak_torque_angle_deg = 0.0;  ///< [deg]
    double crest_angle_deg = 0.0;        ///< torque changes sign; beyond it the blade snaps [deg]
    double energy_up_mj = 0.0;        ///< strain energy, rest to crest; closing gives it back [mJ]
    double energy_released_mj = 0.0;  ///< strain energy, crest to the next rest [mJ]
    double snap_energy_mj = 0.0;      ///< released less friction, from where it runs away [mJ]
    double closing_peak_torque_nmm = 0.0;   ///< largest against closing, friction included [N mm]
    double closing_peak_angle_deg = 0.0;    ///< [deg]
    double closing_start_torque_nmm = 0.0;  ///< to break away from the stroke's end, closing [N mm]
};

/// All of a way at once.
///
/// @returns  nothing when no crest lies between the rests: the spring has let go
[[nodiscard]] std::optional<Stroke> make_stroke(LazyStroke& way);

/// Looks along the way between two contacts of a blade.
///
/// @returns  nothing when no crest lies between them: the spring has let go
[[nodiscard]] std::optional<Stroke> make_stroke(const Action& action,
                                                const Contact& from,
                                                const Contact& to);

}  // namespace backspring

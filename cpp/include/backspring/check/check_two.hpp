#pragma once

#include <string>
#include <vector>

#include "backspring/check/check.hpp"
#include "backspring/check/two_blades.hpp"

namespace backspring {

/// One blade while the other stays in one of its positions.
///
/// The other blade seats anew at every angle, for the spring moves under it. Stress is the worst of
/// the whole spring and its stations are the first blade's, for either blade; contacts are from
/// the blade's own pivot, energy is of the whole spring.
struct Beside {
    std::string other;                  ///< position of the other blade
    std::vector<Position> positions;    ///< open, half_stop (where there is one), closed
    std::vector<StrokeReport> strokes;  ///< opening, in turn
    Travel travel;                      ///< the worst between closed and open
    double other_force_low_n = 0.0;     ///< least force on the other end meanwhile [N]
    double other_force_high_n = 0.0;    ///< greatest force on the other end meanwhile [N]

    /// A position by its name; nothing when the blade does not rest there.
    [[nodiscard]] const Position* position(const std::string& name) const;
};

/// Everything a check of a spring with two blades says.
struct TwoCheck {
    std::vector<Beside> first;   ///< the first blade, a row for each of the other's rests
    std::vector<Beside> second;  ///< the second blade, likewise
    double first_stiffness_n_per_mm = 0.0;   ///< at its pivot, the other tang still [N/mm]
    double second_stiffness_n_per_mm = 0.0;  ///< at its pivot, the other tang still [N/mm]
    double cross_rad_per_nmm = 0.0;          ///< two pins: turn of one root per moment at the other
    std::vector<TargetResult> targets;       ///< those the design states, the worst of all rows
    std::vector<Notice> notices;             ///< what a maker should know
};

/// Checks both blades of a spring, each with the other in every position it has.
///
/// Loaded readings are relative to the spring with both blades open: a blade that opens moves the
/// back at the other end as well. Unloaded readings are of a spring that turns on the blade's own
/// pin and lies on its tang, the other blade out.
///
/// @param step_deg  grid on which peaks are first looked for [deg], 0.05 to 5
/// @throws InvalidInput   with every broken rule
/// @throws NoConvergence  the other blade loses its rest between two steps that have one
/// @note  set, fatigue, local stress, wear and rap are not judged
[[nodiscard]] TwoCheck check_two(const TwoBlades& two, double step_deg = 1.0);

}  // namespace backspring

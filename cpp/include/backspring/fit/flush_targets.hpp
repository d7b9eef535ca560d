#pragma once

#include <optional>

#include "backspring/check/whole_back.hpp"

namespace backspring {

/// Readings to fit for so that the whole back comes out well, not the dial's station alone.
///
/// Each is none where no tang gives such a reading.
struct FlushTargets {
    std::optional<double> nowhere_low_mm;   ///< least loaded reading that leaves nothing low [mm]
    std::optional<double> flattest_mm;      ///< the one whose back is nowhere far from open [mm]
    std::optional<double> flattest_off_mm;  ///< farthest that back then is from open [mm]
    /// Station at which the flattest back reads flush: a dial set there fits for 0; none where it
    /// nowhere does ahead of the middle pin [mm].
    std::optional<double> flattest_dial_mm;
};

/// Finds them by fitting the tang, as allowance() does, for one reading after another.
///
/// Half-stop and closed are both fitted for the same reading; the worse of them counts. The first
/// thousandth of the back, where it hardly moves, is left out of what is low. Other blades at the
/// same end of the spring are left out: the proudest tang there is the one that counts.
///
/// @throws InvalidInput  with every broken rule
[[nodiscard]] FlushTargets flush_targets(const Design& design);

/// The whole back of the knife when its tang is fitted, as allowance() does, for a reading.
///
/// @param target_mm  loaded reading wanted at the dial [mm]
/// @throws NoConvergence  no tang gives that reading
[[nodiscard]] WholeBack fitted_back(const Design& design, double target_mm);

}  // namespace backspring

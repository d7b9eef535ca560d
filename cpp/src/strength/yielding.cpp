#include "backspring/strength/yielding.hpp"

#include <cmath>

namespace backspring {

std::optional<Band> yield_margin(const Band& yield_mpa, double stress_mpa) {
    // So little stress that the margin is no number any more is none.
    if (!(stress_mpa > 0.0) || !std::isfinite(yield_mpa.high / stress_mpa)) return std::nullopt;
    return Band{.value = yield_mpa.value / stress_mpa,
                .low = yield_mpa.low / stress_mpa,
                .high = yield_mpa.high / stress_mpa};
}

}  // namespace backspring

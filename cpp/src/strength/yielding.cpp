#include "backspring/strength/yielding.hpp"

namespace backspring {

std::optional<Band> yield_margin(const Band& yield_mpa, double stress_mpa) {
    if (!(stress_mpa > 0.0)) return std::nullopt;
    return Band{.value = yield_mpa.value / stress_mpa,
                .low = yield_mpa.low / stress_mpa,
                .high = yield_mpa.high / stress_mpa};
}

}  // namespace backspring

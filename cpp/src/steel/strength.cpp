#include "backspring/steel/strength.hpp"

#include "backspring/steel/hardness.hpp"

namespace backspring {

Strength strength_from_hardness(double hardness_hrc, const Band& yield_ratio) {
    const Band tensile = tensile_mpa(hardness_hrc);
    return {.yield_mpa = {.value = tensile.value * yield_ratio.value,
                          .low = tensile.low * yield_ratio.low,
                          .high = tensile.high * yield_ratio.high},
            .tensile_mpa = tensile};
}

}  // namespace backspring

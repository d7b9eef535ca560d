#include "backspring/check/in_use.hpp"

#include "backspring/check/solution.hpp"

namespace backspring {

PlasticSet permanent_set(const Design& design, std::optional<double> yield_mpa) {
    Solution solution(design);
    return plastic_set(solution.action(), design.spring, solution.steps(),
                       yield_mpa.value_or(design.strength.yield_mpa.value));
}

std::vector<BearingPressure> bearing_pressures(const Design& design) {
    Solution solution(design);
    const Elastic& steel = design.spring.elastic;
    return bearing_pressures(solution.joint(), solution.steps(), design.spring.width_mm,
                             contact_modulus_mpa(steel, steel));
}

}  // namespace backspring

#include "backspring/check/in_use.hpp"

#include <algorithm>

#include "backspring/check/case_solutions.hpp"
#include "backspring/design/joint_of.hpp"

namespace backspring {

PlasticSet permanent_set(const Design& design, std::optional<double> yield_mpa) {
    CaseSolutions solved(design);
    const double yield = yield_mpa.value_or(design.strength.yield_mpa.value);
    std::optional<PlasticSet> worst;
    for (Solution& s : solved) {
        const PlasticSet set = plastic_set(design.spring, s.travel(), yield);
        if (!worst || set.drop_pivot_mm > worst->drop_pivot_mm) worst = set;
    }
    return *worst;
}

std::vector<BearingPressure> bearing_pressures(const Design& design) {
    CaseSolutions solved(design);
    const Elastic& steel = design.spring.elastic;
    std::vector<BearingPressure> worst;
    for (Solution& s : solved) {
        for (const BearingPressure& each : bearing_pressures(s.travel(), bearing_width_mm(design),
                                                             contact_modulus_mpa(steel, steel))) {
            const auto known = std::ranges::find(worst, each.bearer, &BearingPressure::bearer);
            if (known == worst.end()) {
                worst.push_back(each);
            } else if (each.force_n > known->force_n) {
                *known = each;
            }
        }
    }
    std::ranges::sort(worst, {}, &BearingPressure::bearer);
    return worst;
}

}  // namespace backspring

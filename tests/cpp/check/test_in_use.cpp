#include <algorithm>

#include "backspring/check/case_solutions.hpp"
#include "backspring/check/in_use.hpp"
#include "catch.hpp"
#include "several_blades.hpp"

using namespace backspring;

TEST_CASE("a blade alone leaves the set of its own travel", "[in use][property]") {
    const Design design = designs::heron();
    Solution solution(design);
    const double soft_mpa = 0.7 * solution.most_stressed().peak.stress_mpa;
    const PlasticSet set = permanent_set(design, soft_mpa);
    const PlasticSet alone = plastic_set(design.spring, solution.travel(), soft_mpa);
    REQUIRE(set.yielded);
    CHECK(set.drop_pivot_mm == alone.drop_pivot_mm);
    CHECK(set.force_n == alone.force_n);
    CHECK_FALSE(permanent_set(design).yielded);
    Design soft = design;
    soft.strength.yield_mpa = {.value = soft_mpa, .low = soft_mpa, .high = soft_mpa};
    CHECK(permanent_set(soft).drop_pivot_mm == set.drop_pivot_mm);
    CHECK_THROWS_AS(permanent_set(design, 0.0), InvalidInput);
}

TEST_CASE("of several blades the set is the largest of all cases", "[in use][blades]") {
    const Design design = designs::bunting(SupportKind::two_pins);
    CaseSolutions solved(design);
    const double soft_mpa = 0.8 * most_stressed(solved).peak.stress_mpa;
    double largest = 0.0;
    for (Solution& one : solved) {
        const PlasticSet set = plastic_set(design.spring, one.travel(), soft_mpa);
        largest = std::max(largest, set.drop_pivot_mm);
    }
    REQUIRE(largest > 0.0);
    CHECK(permanent_set(design, soft_mpa).drop_pivot_mm == largest);
}

TEST_CASE("of several blades each part bears as hard as in its hardest case", "[in use][blades]") {
    const Design design = designs::bunting(SupportKind::two_pins);
    const std::vector<BearingPressure> found = bearing_pressures(design);
    CHECK(std::ranges::is_sorted(found, {}, &BearingPressure::bearer));
    const double modulus = contact_modulus_mpa(design.spring.elastic, design.spring.elastic);
    CaseSolutions solved(design);
    std::size_t hardest = 0;
    for (Solution& one : solved) {
        for (const BearingPressure& each :
             bearing_pressures(one.travel(), design.spring.width_mm, modulus)) {
            const auto all = std::ranges::find(found, each.bearer, &BearingPressure::bearer);
            REQUIRE(all != found.end());
            CHECK(all->force_n >= each.force_n);
            hardest += all->force_n == each.force_n;
        }
    }
    CHECK(hardest == found.size());
}

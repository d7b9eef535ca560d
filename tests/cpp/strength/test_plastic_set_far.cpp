#include <cmath>
#include <vector>

#include "backspring/check/check.hpp"
#include "backspring/strength/plastic_set.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("a spring is followed however far it yields, and more of it the more it is bent",
          "[strength][property]") {
    const auto& [name, design] = GENERATE(from_range(designs::all()));
    CAPTURE(name);
    for (const double yield : {1200.0, 600.0, 300.0}) {
        CAPTURE(yield);
        double last_mm = 0.0;
        for (const double share : {0.5, 1.0, 1.5, 2.2, 3.0, 4.0}) {
            CAPTURE(share);
            Design bent = design;
            bent.own().fit.preload_mm *= share;
            const Action action = make_action(bent);
            const PlasticSet set = plastic_set(bent.spring, Turns(action, {0.0, 180.0}), yield);
            REQUIRE(std::isfinite(set.drop_pivot_mm));
            CHECK(set.shakes_down);
            CHECK(set.contacts <= 200);
            CHECK(set.drop_pivot_mm >= last_mm - 1e-6);
            CHECK(set.preload_after_shakedown_mm <= set.preload_opened_mm + 1e-9);
            CHECK(set.preload_opened_mm <= set.preload_before_mm);
            CHECK_THAT(set.preload_after_shakedown_mm,
                       WithinAbs(bent.own().fit.preload_mm - set.drop_pivot_mm,
                                 1e-9 * bent.own().fit.preload_mm));
            last_mm = set.drop_pivot_mm;
        }
    }
}

TEST_CASE("once it folds, all that it is bent further is lost", "[strength][closed form]") {
    // A hinge at the root bears its plastic moment and no more: the force stays, and so does the
    // elastic bend, so further preload is set, millimetre for millimetre.
    Design design = designs::dunlin();
    std::vector<PlasticSet> sets;
    for (const double preload : {3.0, 3.5, 4.0}) {
        design.own().fit.preload_mm = preload;
        const Action action = make_action(design);
        sets.push_back(plastic_set(design.spring, Turns(action, {0.0, 180.0}), 700.0));
        CHECK(sets.back().folded);
    }
    CHECK_THAT(sets[1].drop_pivot_mm - sets[0].drop_pivot_mm, WithinAbs(0.5, 5e-3));
    CHECK_THAT(sets[2].drop_pivot_mm - sets[1].drop_pivot_mm, WithinAbs(0.5, 5e-3));
}

TEST_CASE("several yield stresses at once are each what they are alone", "[strength][property]") {
    const Design design = designs::heron();
    const Action action = make_action(design);
    const Turns travel(action, {0.0, 180.0});
    const std::vector<double> yields{1100.0, 700.0, 5000.0, 1000.0};
    const auto sets = plastic_sets(design.spring, travel, yields);
    REQUIRE(sets.size() == yields.size());
    for (std::size_t i = 0; i < yields.size(); ++i) {
        const PlasticSet alone = plastic_set(design.spring, travel, yields[i]);
        CAPTURE(yields[i]);
        CHECK(sets[i].yielded == alone.yielded);
        CHECK_THAT(sets[i].drop_pivot_mm, WithinAbs(alone.drop_pivot_mm, 1e-6));
    }
    CHECK(plastic_sets(design.spring, travel, {}).empty());
}

TEST_CASE("the pull that a set leaves is the peak of the set spring's whole travel",
          "[strength][property]") {
    const auto& [name, design] = GENERATE(from_range(designs::all()));
    for (const double preload : {0.6, 1.0, 2.2}) {
        Design bent = design;
        bent.own().fit.preload_mm *= preload;
        const Action action = make_action(bent);
        const Turns travel(action, {0.0, 180.0});
        const PlasticSet set = plastic_set(bent.spring, travel, 700.0);
        Action after = action;
        after.joint = with_shift(action.joint, set.shift);
        const auto opening = [](const Turn& turn) { return turn.opening_nmm(); };
        const double peak = opening(largest(Turns(after, {0.0, 180.0}), opening));
        CAPTURE(name, preload, set.drop_pivot_mm);
        CHECK_THAT(peak_torques(travel, set).after_nmm, WithinRel(peak, 1e-9));
    }
}

#include <algorithm>
#include <cmath>

#include "backspring/strength/fatigue.hpp"
#include "catch.hpp"
#include "fatigue_spring.hpp"

using namespace backspring;
using namespace fatigue_spring;

TEST_CASE("the margin is one where the life is the openings wanted", "[strength][property]") {
    for (const double residual : {0.0, -300.0, 50.0}) {
        for (const double max_mpa : {1100.0, 1180.0, 1260.0, 1300.0}) {
            CAPTURE(residual, max_mpa);
            FatigueInput input = spring();
            input.stress_max_mpa = max_mpa;
            input.residual_mpa = residual;
            const LifeBand life = fatigue(input).life_openings;
            REQUIRE(life.value < 1e6);
            REQUIRE(life.low > 1.0);
            input.openings = life.value;
            CHECK_THAT(margin_of(fatigue(input), Criterion::swt), WithinRel(1.0, 1e-9));
            input.openings = life.low;
            double least = kEndless;
            for (const auto& margin : fatigue(input).margins) {
                if (tells_life(margin.criterion)) least = std::min(least, margin.margin.low);
            }
            CHECK_THAT(least, WithinRel(1.0, 1e-9));
        }
    }
}

TEST_CASE("a margin is missed exactly where the life is", "[strength][property]") {
    for (double max_mpa = 700.0; max_mpa < 1400.0; max_mpa += 13.0) {
        for (const double openings : {500.0, 2e4, 1e5, 1e6}) {
            FatigueInput input = spring();
            input.stress_max_mpa = max_mpa;
            input.openings = openings;
            const Fatigue found = fatigue(input);
            CAPTURE(max_mpa, openings, found.life_openings.value);
            CHECK((margin_of(found, Criterion::swt) >= 1.0) ==
                  (found.life_openings.value >= openings));
        }
    }
}

TEST_CASE("residual stress adds to the mean and does not grow with the load",
          "[strength][closed form]") {
    // (n smax + r) n sa = S^2 and n (sa/S + sm/Su) + r/Su = 1, solved for n.
    for (const double residual : {-500.0, -100.0, 250.0}) {
        CAPTURE(residual);
        FatigueInput input = spring();
        input.residual_mpa = residual;
        const Fatigue found = fatigue(input);
        const double strength = found.strength_mpa;
        const double linear = residual * 380.0, square = 1180.0 * 380.0;
        const double swt =
            (std::sqrt(linear * linear + 4.0 * square * strength * strength) - linear) /
            (2.0 * square);
        CHECK_THAT(margin_of(found, Criterion::swt), WithinRel(swt, 1e-12));
        const double goodman = (1.0 - residual / 1460.0) / (380.0 / strength + 800.0 / 1460.0);
        CHECK_THAT(margin_of(found, Criterion::goodman), WithinRel(goodman, 1e-12));
    }
}

TEST_CASE("a soft skin halves the endurance limit unless the finish leaves less",
          "[strength][closed form]") {
    FatigueInput input = spring();
    input.finish = Finish::polished;
    const double polished = fatigue(input).endurance_mpa;
    input.soft_skin = true;
    CHECK_THAT(fatigue(input).endurance_mpa, WithinRel(0.5 * polished, 1e-14));
    input.finish = Finish::as_forged;
    const double skinned = fatigue(input).endurance_mpa;
    input.soft_skin = false;
    CHECK(skinned == fatigue(input).endurance_mpa);
}

#include <cmath>

#include "backspring/core/error.hpp"
#include "backspring/strength/fatigue.hpp"
#include "backspring/strength/sn_line.hpp"
#include "catch.hpp"
#include "fatigue_spring.hpp"

using namespace backspring;
using namespace fatigue_spring;

TEST_CASE("margins and life are put together from their parts", "[strength][closed form]") {
    const FatigueInput input = spring();
    const Fatigue found = fatigue(input);
    CHECK(found.cycles_per_opening == 4.0);
    CHECK(found.wanted_cycles == 4e5);
    const double surface = surface_factor(Finish::ground, 1460.0);
    CHECK_THAT(found.endurance_mpa, WithinRel(700.0 * surface * reliability_factor(0.99), 1e-14));
    const SnLine line = make_sn_line(1460.0, share_at_thousand(1460.0).value, found.endurance_mpa);
    CHECK_THAT(found.strength_mpa, WithinRel(fatigue_strength_mpa(line, 4e5), 1e-14));
    CHECK_THAT(margin_of(found, Criterion::goodman),
               WithinRel(1.0 / (380.0 / found.strength_mpa + 800.0 / 1460.0), 1e-13));
    CHECK_THAT(margin_of(found, Criterion::swt),
               WithinRel(found.strength_mpa / std::sqrt(1180.0 * 380.0), 1e-13));

    const double reversed = std::sqrt(1180.0 * 380.0);
    CHECK_THAT(found.life_openings.value,
               WithinRel(cycles_to_failure(line, reversed).value() / 4.0, 1e-12));
    const SnLine half = make_sn_line(1460.0, share_at_thousand(1460.0).value, 700.0 * surface);
    CHECK_THAT(found.life_openings.typical,
               WithinRel(cycles_to_failure(half, reversed).value() / 4.0, 1e-12));
}

TEST_CASE("a margin of one at the wanted openings is what the strength means",
          "[strength][property]") {
    for (const double openings : {200.0, 1e4, 1e5, 1e7}) {
        FatigueInput input = spring();
        input.openings = openings;
        for (const auto& margin : fatigue(input).margins) {
            CAPTURE(openings, static_cast<int>(margin.criterion));
            FatigueInput grown = input;
            grown.stress_max_mpa *= margin.margin.value;
            grown.stress_min_mpa *= margin.margin.value;
            CHECK_THAT(margin_of(fatigue(grown), margin.criterion), WithinRel(1.0, 1e-12));
        }
    }
}

TEST_CASE("bands hold their value", "[strength][property]") {
    for (const double max_mpa : {600.0, 800.0, 1000.0, 1200.0, 1400.0}) {
        FatigueInput input = spring();
        input.stress_max_mpa = max_mpa;
        const Fatigue found = fatigue(input);
        CAPTURE(max_mpa);
        CHECK(found.margins.size() == 5);
        for (const auto& margin : found.margins) {
            CHECK(margin.margin.low <= margin.margin.value);
            CHECK(margin.margin.value <= margin.margin.high);
        }
        const double value = found.life_openings.value;
        CHECK(found.life_openings.low <= value);
        CHECK(value <= found.life_openings.high);
    }
}

TEST_CASE("more stress, a rougher finish or a sharper notch shorten life", "[strength][property]") {
    const auto life = [](const FatigueInput& input) { return fatigue(input).life_openings.value; };
    double last = kEndless;
    for (double max_mpa = 1160.0; max_mpa <= 1400.0; max_mpa += 20.0) {
        FatigueInput input = spring();
        input.stress_max_mpa = max_mpa;
        CHECK(life(input) < last);
        last = life(input);
    }
    FatigueInput machined = spring(), notched = spring(), slack = spring();
    machined.finish = Finish::machined;
    notched.notch_factor = 1.1;
    slack.stress_min_mpa = 100.0;
    CHECK(life(machined) < life(spring()));
    CHECK(life(notched) < life(spring()));
    CHECK(life(slack) < life(spring()));
}

TEST_CASE("more openings or more certainty leave less margin", "[strength][property]") {
    FatigueInput more = spring(), surer = spring(), no_half_stop = spring();
    more.openings = 2e5;
    surer.reliability = 0.999;
    no_half_stop.strokes = 1;
    const double margin = margin_of(fatigue(spring()), Criterion::goodman);
    CHECK(margin_of(fatigue(more), Criterion::goodman) < margin);
    CHECK(margin_of(fatigue(surer), Criterion::goodman) < margin);
    CHECK(margin_of(fatigue(no_half_stop), Criterion::goodman) > margin);
}

TEST_CASE("reliability does not change what a typical spring lasts", "[strength][property]") {
    FatigueInput surer = spring();
    surer.reliability = 0.9999;
    CHECK(fatigue(surer).life_openings.typical == fatigue(spring()).life_openings.typical);
    CHECK(fatigue(surer).life_openings.value < fatigue(spring()).life_openings.value);
}

TEST_CASE("a mildly stressed spring sees no end", "[strength][property]") {
    FatigueInput mild = spring();
    mild.stress_max_mpa = 400.0;
    mild.stress_min_mpa = 200.0;
    const Fatigue found = fatigue(mild);
    CHECK(found.life_openings.low == kEndless);
    CHECK(found.life_openings.value == kEndless);
    for (const auto& margin : found.margins) CHECK(margin.margin.low > 1.0);
}

TEST_CASE("a stress beyond the tensile strength breaks at once", "[strength][property]") {
    FatigueInput broken = spring();
    broken.stress_max_mpa = 3000.0;
    broken.stress_min_mpa = 0.0;
    CHECK(fatigue(broken).life_openings.value == 0.0);
}

TEST_CASE("an unloaded spring has no margins", "[strength][property]") {
    FatigueInput idle = spring();
    idle.stress_max_mpa = idle.stress_min_mpa = 0.0;
    const Fatigue found = fatigue(idle);
    CHECK(found.margins.empty());
    CHECK(found.trade.empty());
    CHECK_FALSE(found.first_yield);
    CHECK(found.life_openings.low == kEndless);
}

TEST_CASE("the spring trade's tables stand beside it", "[strength][closed form]") {
    FatigueInput input = spring();
    input.notch_factor = 1.1;
    const Fatigue found = fatigue(input);
    REQUIRE(found.trade.size() == 5);
    for (const auto& trade : found.trade) {
        CAPTURE(trade.allowable.stated_for);
        const double share = trade.allowable.fraction / (1.1 * 1180.0);
        CHECK_THAT(trade.margin.value, WithinRel(share * 1460.0, 1e-13));
        CHECK_THAT(trade.margin.low, WithinRel(share * 1440.0, 1e-13));
        CHECK_THAT(trade.margin.high, WithinRel(share * 1482.0, 1e-13));
    }
    CHECK_THAT(found.first_yield.value().low, WithinRel(1150.0 / 1298.0, 1e-13));
}

TEST_CASE("every broken rule of a fatigue question is told at once", "[strength][rules]") {
    FatigueInput input;
    input.stress_min_mpa = 10.0;
    input.tensile_mpa = {1460.0, kNan, 1482.0};
    input.yield_mpa = {1240.0, 1300.0, 1360.0};
    input.notch_factor = 0.9;
    input.openings = 0.0;
    input.strokes = 0;
    try {
        (void)fatigue(input);
        FAIL("accepted");
    } catch (const InvalidInput& error) {
        std::vector<std::string> keys;
        for (const Fault& fault : error.faults()) keys.push_back(fault.key);
        CHECK(keys == std::vector<std::string>{"stress_min_mpa", "tensile_mpa.low",
                                               "yield_mpa.value", "width_mm", "thickness_mm",
                                               "notch_factor", "openings", "strokes"});
    }
}

TEST_CASE("a temperature or reliability without data is out of range", "[strength][rules]") {
    FatigueInput hot = spring(), certain = spring();
    hot.temperature_c = 600.0;
    certain.reliability = 1.0;
    CHECK_THROWS_AS(fatigue(hot), OutOfRange);
    CHECK_THROWS_AS(fatigue(certain), OutOfRange);
}

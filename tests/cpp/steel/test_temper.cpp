#include <cmath>
#include <limits>

#include "backspring/core/error.hpp"
#include "backspring/steel/temper.hpp"
#include "backspring/steel/temper_table.hpp"
#include "catch.hpp"

using namespace backspring;

namespace {

// Invented: 60 HRC at P = 8, 6 HRC softer for every 1 of P.
const TemperFit kLinear = {.time_constant = 18.0,
                           .mean = 8.0,
                           .deviation = 0.5,
                           .coefficients = {60.0, -3.0, 0.0, 0.0},
                           .spread_hrc = 0.7};

// Invented; level from 300 to 400 C.
const TemperTable kTable = {.points = {{200.0, {60.0, 59.0, 61.0}},
                                       {300.0, {56.0, 54.0, 57.0}},
                                       {400.0, {56.0, 54.0, 57.0}},
                                       {500.0, {46.0, 44.0, 48.0}}},
                            .hold_h = 2.0};

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();

}  // namespace

TEST_CASE("the parameter is T (C + log10 t) / 1000", "[steel][formula]") {
    // 600 K for 100 h: 600 x (18 + 2) / 1000.
    CHECK_THAT(temper_parameter(kLinear, {326.85, 100.0}), WithinAbs(12.0, 1e-12));
    CHECK_THROWS_AS(temper_parameter(kLinear, {-273.15, 1.0}), InvalidInput);
    CHECK_THROWS_AS(temper_parameter(kLinear, {300.0, 0.0}), InvalidInput);
    CHECK_THROWS_AS(temper_parameter(kLinear, {kNan, 1.0}), InvalidInput);
}

TEST_CASE("hardness follows the polynomial and carries the spread", "[steel][formula]") {
    const Band hardness = hardness_after_temper(kLinear, {226.85, 10.0});
    // P = 500 x 19 / 1000 = 9.5, x = 3, 60 - 9.
    CHECK_THAT(hardness.value, WithinAbs(51.0, 1e-12));
    CHECK_THAT(hardness.low, WithinAbs(50.3, 1e-12));
    CHECK_THAT(hardness.high, WithinAbs(51.7, 1e-12));
}

TEST_CASE("the temper found gives the hardness asked for", "[steel][property]") {
    for (const double time_h : {1.0 / 6.0, 1.0, 2.0, 24.0}) {
        for (double temper_c = 195.0; temper_c <= 430.0; temper_c += 8.5) {
            CAPTURE(time_h, temper_c);
            const double hrc = hardness_after_temper(kLinear, {temper_c, time_h}).value;
            CHECK_THAT(temper_for_hardness(kLinear, hrc, time_h), WithinAbs(temper_c, 1e-9));
        }
    }
    for (double hrc = 46.0; hrc <= 60.0; hrc += 0.25) {
        CAPTURE(hrc);
        const double temper_c = temper_for_hardness(kTable, hrc);
        CHECK_THAT(hardness_after_temper(kTable, temper_c).value, WithinAbs(hrc, 1e-12));
    }
    CHECK(temper_for_hardness(kTable, 56.0) == 300.0);
    CHECK(temper_for_hardness(kTable, 60.0) == 200.0);
}

TEST_CASE("two stays at one temperature are one stay of their sum", "[steel][property]") {
    for (const double later_h : {0.5, 1.0, 6.0}) {
        CAPTURE(later_h);
        const HeatEffect effect = hardness_after_heat(kLinear, {300.0, 2.0}, {300.0, later_h});
        const Band once = hardness_after_temper(kLinear, {300.0, 2.0 + later_h});
        CHECK_THAT(effect.hardness_hrc.value, WithinAbs(once.value, 1e-9));
        CHECK_FALSE(effect.extrapolated_in_time);
    }
}

TEST_CASE("a much cooler heat changes nothing, a much hotter one hides the temper",
          "[steel][limit]") {
    const Heat temper = {300.0, 2.0};
    const double before = hardness_after_temper(kLinear, temper).value;
    CHECK_THAT(hardness_after_heat(kLinear, temper, {200.0, 2.0}).hardness_hrc.value,
               WithinAbs(before, 1e-3));
    CHECK(hardness_after_heat(kLinear, temper, {20.0, 2.0}).hardness_hrc.value == before);
    const double alone = hardness_after_temper(kLinear, {450.0, 2.0}).value;
    CHECK_THAT(hardness_after_heat(kLinear, {195.0, 1.0}, {450.0, 2.0}).hardness_hrc.value,
               WithinAbs(alone, 1e-3));
}

TEST_CASE("a later heat never hardens, and a longer or hotter one softens more",
          "[steel][property]") {
    const Heat temper = {350.0, 2.0};
    double last = hardness_after_temper(kLinear, temper).value;
    for (const double later_c : {250.0, 350.0, 380.0, 420.0, 450.0}) {
        double longer = last;
        for (const double time_h : {10.0 / 3600.0, 1.0 / 60.0, 0.25, 2.0}) {
            CAPTURE(later_c, time_h);
            const HeatEffect effect = hardness_after_heat(kLinear, temper, {later_c, time_h});
            CHECK(effect.hardness_hrc.value <= longer);
            CHECK(effect.extrapolated_in_time == (time_h < kLinear.shortest_h));
            longer = effect.hardness_hrc.value;
        }
    }
}

TEST_CASE("what was not fitted is refused with the range", "[steel][abuse]") {
    CHECK_THROWS_WITH(hardness_after_temper(kLinear, {194.9, 2.0}),
                      "temper-range: low 195 C, high 620 C, value 194.9 C");
    CHECK_THROWS_WITH(hardness_after_temper(kLinear, {300.0, 0.1}),
                      "temper-time-range: low 0.1666667 h, high 24 h, value 0.1 h");
    CHECK_THROWS_WITH(hardness_after_temper(kLinear, {300.0, 24.1}),
                      "temper-time-range: low 0.1666667 h, high 24 h, value 24.1 h");
    CHECK_THROWS_WITH(hardness_after_temper(kLinear, {620.0, 24.0}),
                      "later-too-soft: low 25 HRC, value 4.143386 HRC");
    CHECK_THROWS_WITH(temper_for_hardness(kLinear, 24.0, 2.0),
                      ContainsSubstring("hardness-after-hold: low 25 HRC, high 5"));
    CHECK_THROWS_WITH(hardness_after_heat(kLinear, {300.0, 2.0}, {621.0, 0.01}),
                      "later-heat-hottest: high 620 C, value 621 C");
    CHECK_THROWS_WITH(hardness_after_heat(kLinear, {300.0, 2.0}, {400.0, 25.0}),
                      "later-time-longest: high 24 h, value 25 h");
    CHECK_THROWS_AS(hardness_after_heat(kLinear, {300.0, 2.0}, {400.0, 0.0}), OutOfRange);
    CHECK_THROWS_WITH(hardness_after_heat(kLinear, {300.0, 2.0}, {190.0, 3.0}),
                      "later-heat-range: low 195 C, high 620 C, value 190 C");
    for (const Heat& bad : {Heat{kNan, 2.0}, Heat{300.0, kNan}}) {
        CHECK_THROWS_AS(hardness_after_temper(kLinear, bad), OutOfRange);
        CHECK_THROWS_AS(hardness_after_heat(kLinear, {300.0, 2.0}, bad), OutOfRange);
    }
    CHECK_THROWS_AS(temper_for_hardness(kLinear, kNan, 2.0), OutOfRange);
}

TEST_CASE("a fit without a deviation is refused", "[steel][abuse]") {
    TemperFit flat = kLinear;
    flat.deviation = 0.0;
    CHECK_THROWS_AS(hardness_after_temper(flat, {300.0, 2.0}), InvalidInput);
    CHECK_THROWS_AS(temper_for_hardness(flat, 50.0, 2.0), InvalidInput);
}

TEST_CASE("a table gives its rows and the band between them", "[steel][formula]") {
    for (const TemperPoint& row : kTable.points) {
        const Band hardness = hardness_after_temper(kTable, row.temper_c);
        CHECK(hardness.value == row.hardness_hrc.value);
        CHECK(hardness.low == row.hardness_hrc.low);
        CHECK(hardness.high == row.hardness_hrc.high);
    }
    const Band between = hardness_after_temper(kTable, 450.0);
    CHECK(between.value == 51.0);
    CHECK(between.low == 49.0);
    CHECK(between.high == 52.5);
}

TEST_CASE("a table knows its tempers, its hold and no later heat above the temper",
          "[steel][abuse]") {
    CHECK_THROWS_WITH(hardness_after_temper(kTable, 501.0),
                      "temper-range: low 200 C, high 500 C, value 501 C");
    CHECK_THROWS_AS(hardness_after_temper(kTable, kNan), OutOfRange);
    CHECK(hardness_after_temper(kTable, 450.0, 1.0).value == 51.0);
    CHECK(hardness_after_temper(kTable, 450.0, 8.0).value == 51.0);
    CHECK_THROWS_WITH(hardness_after_temper(kTable, 450.0, 0.9),
                      "temper-hold: hold 2 h, low 1 h, high 8 h, value 0.9 h");
    CHECK_THROWS_WITH(temper_for_hardness(kTable, 45.0),
                      "hardness-range: low 46 HRC, high 60 HRC, value 45 HRC");
    CHECK(hardness_after_heat(kTable, 450.0, 450.0).value == 51.0);
    CHECK(hardness_after_heat(kTable, 450.0, 20.0).value == 51.0);
    CHECK_THROWS_WITH(hardness_after_heat(kTable, 450.0, 460.0),
                      "later-above-temper: temper 450 C, value 460 C");
}

TEST_CASE("a table without a hold takes any time", "[steel]") {
    TemperTable table = kTable;
    table.hold_h.reset();
    CHECK(hardness_after_temper(table, 450.0, 100.0).value == 51.0);
}

TEST_CASE("what is no temper table is refused", "[steel][abuse]") {
    const TemperTable one_row = {.points = {{200.0, {60.0, 60.0, 60.0}}}, .hold_h = {}};
    CHECK_THROWS_WITH(hardness_after_temper(one_row, 200.0), "points: must be two or more");
    TemperTable falling = kTable;
    falling.points[1].temper_c = 200.0;
    CHECK_THROWS_WITH(temper_for_hardness(falling, 50.0),
                      "points: temper must rise from row to row");
    TemperTable harder = kTable;
    harder.points[2].hardness_hrc.value = 57.0;
    CHECK_THROWS_WITH(hardness_after_heat(harder, 450.0, 400.0),
                      "points: hardness must not rise from row to row");
}

#include <limits>

#include "backspring/core/error.hpp"
#include "backspring/strength/sn_line.hpp"
#include "catch.hpp"

using namespace backspring;

namespace {

const SnLine kLine = make_sn_line(1500.0, 0.776, 480.0);

}  // namespace

TEST_CASE("the line passes through its three corners", "[strength][closed form]") {
    CHECK(fatigue_strength_mpa(kLine, 1.0) == 1500.0);
    CHECK_THAT(fatigue_strength_mpa(kLine, 1e3), WithinRel(0.776 * 1500.0, 1e-13));
    CHECK_THAT(fatigue_strength_mpa(kLine, 1e3 - 1e-6), WithinRel(0.776 * 1500.0, 1e-9));
    CHECK(fatigue_strength_mpa(kLine, 1e6) == 480.0);
    CHECK(fatigue_strength_mpa(kLine, 1e9) == 480.0);
}

TEST_CASE("cycles and strength are inverse to each other", "[strength][property]") {
    for (const double cycles : {1.0, 7.0, 500.0, 1e3, 2e3, 1e4, 3e5, 9.99e5}) {
        CAPTURE(cycles);
        const double stress = fatigue_strength_mpa(kLine, cycles);
        CHECK_THAT(cycles_to_failure(kLine, stress).value(), WithinRel(cycles, 1e-10));
    }
}

TEST_CASE("more stress, fewer cycles", "[strength][property]") {
    double last = std::numeric_limits<double>::infinity();
    for (double stress = 481.0; stress <= 1500.0; stress += 7.0) {
        CAPTURE(stress);
        const double cycles = cycles_to_failure(kLine, stress).value();
        CHECK(cycles < last);
        last = cycles;
    }
}

TEST_CASE("no end at the endurance limit, none at all beyond the tensile strength",
          "[strength][property]") {
    CHECK_FALSE(cycles_to_failure(kLine, 480.0));
    CHECK_FALSE(cycles_to_failure(kLine, 0.0));
    CHECK(cycles_to_failure(kLine, 1500.1) == 0.0);
    CHECK(cycles_to_failure(kLine, std::numeric_limits<double>::infinity()) == 0.0);
}

TEST_CASE("a share of tensile strength that falls to 1400 MPa and is level beyond",
          "[strength][property]") {
    double last = 1.0;
    for (double tensile_mpa = 500.0; tensile_mpa < 1380.0; tensile_mpa += 40.0) {
        const Band share = share_at_thousand(tensile_mpa);
        CHECK(share.value < last);
        CHECK(share.low < share.value);
        CHECK(share.value < share.high);
        CHECK(share.high < 1.0);
        last = share.value;
    }
    CHECK(share_at_thousand(1400.0).value == share_at_thousand(2200.0).value);
    CHECK(share_at_thousand(300.0).value == share_at_thousand(480.0).value);
}

TEST_CASE("a line out of order is refused", "[strength][rules]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS(make_sn_line(0.0, 0.8, 100.0), InvalidInput);
    CHECK_THROWS_AS(make_sn_line(nan, 0.8, 100.0), InvalidInput);
    CHECK_THROWS_AS(make_sn_line(1000.0, 1.0, 100.0), InvalidInput);
    CHECK_THROWS_AS(make_sn_line(1000.0, nan, 100.0), InvalidInput);
    CHECK_THROWS_AS(make_sn_line(1000.0, 0.8, -1.0), InvalidInput);
    CHECK_THROWS_WITH(make_sn_line(1000.0, 0.8, 800.0),
                      ContainsSubstring("endurance_mpa: must be less than share_at_thousand x "
                                        "tensile_mpa, 800 MPa, got 800 MPa"));
    CHECK_THROWS_AS(fatigue_strength_mpa(kLine, 0.5), OutOfRange);
    CHECK_THROWS_AS(fatigue_strength_mpa(kLine, nan), OutOfRange);
}

#include <limits>

#include "backspring/core/error.hpp"
#include "backspring/strength/notch_sensitivity.hpp"
#include "catch.hpp"

using namespace backspring;

TEST_CASE("harder steel and a larger root feel a notch more", "[strength][property]") {
    double last = 0.0;
    for (const double tensile_mpa : {340.0, 700.0, 1000.0, 1400.0, 1600.0, 1699.0}) {
        const double q = notch_sensitivity(tensile_mpa, 0.5);
        CAPTURE(tensile_mpa);
        CHECK(q > last);
        CHECK(q < 1.0);
        CHECK(notch_sensitivity(tensile_mpa, 1.0) > q);
        last = q;
    }
}

TEST_CASE("a hard spring feels all of a notch, after a small step", "[strength][property]") {
    CHECK(notch_sensitivity(1701.0, 0.1) == 1.0);
    CHECK(notch_sensitivity(2300.0, 0.1) == 1.0);
    // The polynomial evaluated apart: 0.0219 mm^0.5 at 1700 MPa.
    CHECK_THAT(1.0 - notch_sensitivity(1700.0, 0.1), WithinAbs(0.065, 5e-4));
    CHECK_THAT(1.0 - notch_sensitivity(1700.0, 0.5), WithinAbs(0.030, 5e-4));
}

TEST_CASE("the fatigue factor lies between none and all", "[strength][closed form]") {
    CHECK(fatigue_notch_factor(2.0, 0.0) == 1.0);
    CHECK(fatigue_notch_factor(2.0, 1.0) == 2.0);
    CHECK(fatigue_notch_factor(2.0, 0.5) == 1.5);
}

TEST_CASE("soft steel and a sharp root are refused", "[strength][rules]") {
    CHECK_THROWS_WITH(neuber_root_length(339.0),
                      ContainsSubstring("tensile strength in MPa: must be at least 340, got 339"));
    CHECK_THROWS_AS(notch_sensitivity(1000.0, 0.0), OutOfRange);
    CHECK_THROWS_AS(notch_sensitivity(1000.0, std::numeric_limits<double>::quiet_NaN()),
                    OutOfRange);
}

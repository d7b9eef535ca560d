#include <limits>

#include "backspring/core/error.hpp"
#include "backspring/strength/groove.hpp"
#include "catch.hpp"

using namespace backspring;

TEST_CASE("a sharper groove carries more", "[strength][property]") {
    double both = 1.0, one = 1.0;
    for (const double radius : {0.9, 0.6, 0.4, 0.2, 0.1, 0.08}) {
        CAPTURE(radius);
        CHECK(groove_factor(3.0, 0.3, radius) > both);
        CHECK(one_sided_groove_factor(3.0, 0.3, radius) > one);
        both = groove_factor(3.0, 0.3, radius);
        one = one_sided_groove_factor(3.0, 0.3, radius);
        CHECK(one > both);
    }
}

TEST_CASE("a shallow half-round scratch carries about three times the stress",
          "[strength][closed form]") {
    // 3.065, half-round edge notch of a half-plane in tension: from memory.
    CHECK_THAT(groove_factor(1000.0, 0.1, 0.1), WithinRel(3.065, 0.01));
    CHECK_THAT(one_sided_groove_factor(5.0, 0.1, 0.1), WithinRel(3.065, 0.06));
}

TEST_CASE("grooves outside the checked range are refused", "[strength][rules]") {
    CHECK_THROWS_WITH(groove_factor(3.0, 0.1, 0.5), ContainsSubstring("from 0.25 to 50"));
    CHECK_THROWS_AS(groove_factor(3.0, 1.6, 0.5), OutOfRange);
    CHECK_THROWS_WITH(one_sided_groove_factor(3.0, 0.7, 0.5),
                      ContainsSubstring("groove depth over thickness: must be from 0.02 to 0.2"));
    CHECK_THROWS_AS(one_sided_groove_factor(3.0, 0.3, 0.05), OutOfRange);
    CHECK_THROWS_AS(one_sided_groove_factor(3.0, 0.6, 0.1), OutOfRange);
    CHECK_THROWS_AS(groove_factor(3.0, std::numeric_limits<double>::quiet_NaN(), 0.1), OutOfRange);
}

#include <limits>

#include "backspring/core/error.hpp"
#include "backspring/strength/shoulder.hpp"
#include "catch.hpp"

using namespace backspring;

TEST_CASE("a smaller fillet carries more", "[strength][property]") {
    double both = 1.0, one = 1.0;
    for (const double fillet : {3.0, 1.5, 1.0, 0.6, 0.4, 0.3, 0.2}) {
        CAPTURE(fillet);
        CHECK(shoulder_factor(4.2, 3.0, fillet) > both);
        CHECK(one_sided_shoulder_factor(3.6, 3.0, fillet) > one);
        both = shoulder_factor(4.2, 3.0, fillet);
        one = one_sided_shoulder_factor(3.6, 3.0, fillet);
    }
}

TEST_CASE("a shoulder of one face carries more than the same of both", "[strength][property]") {
    for (const double fillet : {0.3, 1.0, 3.0}) {
        CHECK(one_sided_shoulder_factor(3.6, 3.0, fillet) > shoulder_factor(4.2, 3.0, fillet));
    }
}

TEST_CASE("a factor of the shape alone", "[strength][property]") {
    CHECK_THAT(shoulder_factor(8.4, 6.0, 0.6), WithinRel(shoulder_factor(4.2, 3.0, 0.3), 1e-13));
    CHECK_THAT(one_sided_shoulder_factor(7.2, 6.0, 0.6),
               WithinRel(one_sided_shoulder_factor(3.6, 3.0, 0.3), 1e-13));
}

TEST_CASE("shoulders outside the checked range are refused", "[strength][rules]") {
    CHECK_THROWS_WITH(shoulder_factor(4.0, 3.0, 6.0), ContainsSubstring("from 0.1 to 20"));
    CHECK_THROWS_AS(shoulder_factor(4.0, 3.0, 0.0), OutOfRange);
    CHECK_THROWS_AS(shoulder_factor(3.0, 4.0, 0.5), OutOfRange);
    CHECK_THROWS_WITH(one_sided_shoulder_factor(3.1, 3.0, 0.3),
                      ContainsSubstring("step over thin side: must be from 0.05 to 2"));
    CHECK_THROWS_WITH(one_sided_shoulder_factor(3.6, 3.0, 0.1),
                      ContainsSubstring("fillet radius over thin side: must be from 0.05 to 1"));
    CHECK_THROWS_AS(shoulder_factor(4.0, 3.0, std::numeric_limits<double>::quiet_NaN()),
                    OutOfRange);
}

TEST_CASE("shoulders are the steps of a profile", "[strength][property]") {
    const auto found =
        find_shoulders({{0.0, 3.0}, {5.0, 3.0}, {5.0, 2.2}, {9.0, 2.0}, {9.0, 2.6}, {12.0, 2.6}});
    REQUIRE(found.size() == 2);
    CHECK(found[0].station_mm == 5.0);
    CHECK(found[0].large_mm == 3.0);
    CHECK(found[0].small_mm == 2.2);
    CHECK(found[1].large_mm == 2.6);
    CHECK(found[1].small_mm == 2.0);
}

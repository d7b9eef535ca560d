#include <limits>

#include "backspring/core/error.hpp"
#include "backspring/strength/spring_allowable.hpp"
#include "catch.hpp"

using namespace backspring;

TEST_CASE("longer lives allow less, table by table", "[strength][property]") {
    for (const SpringSteel steel : {SpringSteel::carbon, SpringSteel::stainless}) {
        std::vector<SpringAllowable> last;
        for (double cycles = 1.0; cycles < 1e9; cycles *= 1.7) {
            const auto now = spring_allowables(steel, cycles);
            CHECK_FALSE(now.empty());
            for (const auto& a : now) {
                CHECK((a.fraction >= 0.45 && a.fraction <= 0.80));
                for (const auto& b : last) {
                    CAPTURE(a.stated_for, cycles);
                    if (a.stated_for == b.stated_for) CHECK(a.fraction <= b.fraction);
                }
            }
            last = now;
        }
    }
}

TEST_CASE("a table that ends before a life is left out", "[strength][property]") {
    CHECK(spring_allowables(SpringSteel::carbon, 9e4).size() == 2);
    CHECK(spring_allowables(SpringSteel::carbon, 1e5).size() == 5);
    CHECK(spring_allowables(SpringSteel::carbon, 2e6).size() == 3);
    CHECK(spring_allowables(SpringSteel::carbon, 2e7).size() == 2);
    CHECK(spring_allowables(SpringSteel::stainless, 9e4).size() == 1);
    CHECK(spring_allowables(SpringSteel::stainless, 1e5).size() == 3);
}

TEST_CASE("every entry says where it is from", "[strength][property]") {
    for (const auto& allowable : spring_allowables(SpringSteel::carbon, 4e5)) {
        CHECK_FALSE(allowable.stated_for.empty());
        CHECK_FALSE(allowable.source.empty());
        CHECK((allowable.confidence == "read" || allowable.confidence == "memory"));
    }
}

TEST_CASE("less than one cycle is no life", "[strength][rules]") {
    CHECK_THROWS_AS(spring_allowables(SpringSteel::carbon, 0.5), OutOfRange);
    CHECK_THROWS_AS(
        spring_allowables(SpringSteel::carbon, std::numeric_limits<double>::quiet_NaN()),
        OutOfRange);
}

#include "backspring/strength/yielding.hpp"
#include "catch.hpp"

using backspring::Band;
using backspring::yield_margin;

TEST_CASE("yield margin is yield over stress, end by end", "[strength][closed form]") {
    const auto margin = yield_margin({1200.0, 1000.0, 1500.0}, 1000.0);
    REQUIRE(margin);
    CHECK(margin->value == 1.2);
    CHECK(margin->low == 1.0);
    CHECK(margin->high == 1.5);
}

TEST_CASE("an unloaded spring has no yield margin", "[strength][property]") {
    CHECK_FALSE(yield_margin({1200.0, 1000.0, 1500.0}, 0.0));
}

TEST_CASE("of next to nothing no margin is told, and none is endless", "[yielding][abuse]") {
    const Band yield{.value = 1300.0, .low = 1200.0, .high = 1400.0};
    CHECK_FALSE(yield_margin(yield, 1e-310));
    CHECK(yield_margin(yield, 1e-300)->value == 1300.0 / 1e-300);
}

#include <limits>

#include "backspring/core/require.hpp"
#include "catch.hpp"

using backspring::InvalidInput;
using backspring::Requirements;
using backspring::with_unit;

namespace {
constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();
}  // namespace

TEST_CASE("a number is printed without needless digits", "[core][closed form]") {
    CHECK(with_unit(2.3, "mm") == "2.3 mm");
    CHECK(with_unit(-2.0, "") == "-2");
    CHECK(with_unit(205000.0, "MPa") == "205000 MPa");
    CHECK(with_unit(0.0001, "mm") == "0.0001 mm");
}

TEST_CASE("a value on the limit is in range unless the low end is open", "[core][property]") {
    Requirements rules;
    CHECK(rules.in_range("a", 0.0, 0.0, 1.0, "mm"));
    CHECK(rules.in_range("a", 1.0, 0.0, 1.0, "mm"));
    CHECK(rules.faults().empty());
    CHECK_FALSE(rules.in_range("a", 0.0, 0.0, 1.0, "mm", true));
    CHECK_FALSE(rules.positive("a", 0.0, 1.0, "mm"));
    CHECK(rules.faults().size() == 2);
}

TEST_CASE("each kind of broken range has its own words", "[core][abuse]") {
    Requirements rules;
    rules.positive("spring.width", -2.3, 50.0, "mm");
    rules.in_range("friction.spring", -0.1, 0.0, 1.0, "");
    rules.in_range("friction.spring", 1.5, 0.0, 1.0, "");
    rules.positive("spring.width", kNan, 50.0, "mm");
    rules.positive("spring.width", kInfinity, 50.0, "mm");
    REQUIRE(rules.faults().size() == 5);
    CHECK(message(rules.faults()[0]) == "must be greater than 0 mm, got -2.3 mm");
    CHECK(message(rules.faults()[1]) == "must be at least 0, got -0.1");
    CHECK(message(rules.faults()[2]) == "must be at most 1, got 1.5");
    CHECK_THAT(message(rules.faults()[3]), ContainsSubstring("must be a finite number"));
    CHECK_THAT(message(rules.faults()[4]), ContainsSubstring("must be a finite number"));
}

TEST_CASE("nothing is thrown while every rule holds", "[core][property]") {
    Requirements rules;
    CHECK(rules.require(true, "a", [] { return "never told"; }));
    CHECK_NOTHROW(rules.throw_if_any());
}

TEST_CASE("all broken rules are thrown together and in order", "[core][property]") {
    Requirements rules;
    rules.fail("a", "first");
    CHECK_FALSE(rules.require(false, "b", [] { return "second"; }));
    try {
        rules.throw_if_any();
        FAIL("broken rules were not thrown");
    } catch (const InvalidInput& error) {
        REQUIRE(error.faults().size() == 2);
        CHECK(error.faults()[0].key == "a");
        CHECK(message(error.faults()[1]) == "second");
    }
}

TEST_CASE("a unit names its quantity, and one that none has is refused", "[core][abuse]") {
    CHECK(quantity_in("mm") == Quantity::length);
    CHECK(quantity_in("MPa") == Quantity::stress);
    CHECK(quantity_in("") == Quantity::ratio);
    CHECK_THROWS_WITH(quantity_in("furlongs"), "no quantity is measured in furlongs");
    CHECK(with_unit(2.5, "") == "2.5");
    CHECK(with_unit(2.5, "turns") == "2.5 turns");
}

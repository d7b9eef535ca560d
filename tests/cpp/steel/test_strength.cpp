#include "backspring/core/error.hpp"
#include "backspring/steel/hardness.hpp"
#include "backspring/steel/strength.hpp"
#include "catch.hpp"

using namespace backspring;

TEST_CASE("yield is tensile strength times its ratio, end by end", "[steel][closed form]") {
    const Strength strength = strength_from_hardness(45.0, {0.9, 0.85, 0.95});
    const Band tensile = tensile_mpa(45.0);
    CHECK(strength.tensile_mpa.value == tensile.value);
    CHECK(strength.yield_mpa.value == 0.9 * tensile.value);
    CHECK(strength.yield_mpa.low == 0.85 * tensile.low);
    CHECK(strength.yield_mpa.high == 0.95 * tensile.high);
}

TEST_CASE("strength is not guessed beyond the hardness tables", "[steel][abuse]") {
    CHECK_THROWS_AS(strength_from_hardness(61.0, {0.9, 0.85, 0.95}), OutOfRange);
}

#include <cmath>

#include "backspring/core/error.hpp"
#include "backspring/tolerance/batch_chance.hpp"
#include "catch.hpp"

using namespace backspring;

TEST_CASE("the chance of a batch is the share's power", "[batch_chance]") {
    const BatchChance chance = batch_chance(900, 1000, 3);
    CHECK(chance.share == 0.9);
    CHECK_THAT(chance.chance, WithinRel(0.729, 1e-14));
    CHECK_THAT(chance.chance_low, WithinRel(std::pow(chance.share_low, 3), 1e-14));
    CHECK_THAT(chance.chance_high, WithinRel(std::pow(chance.share_high, 3), 1e-14));
}

TEST_CASE("limits are Clopper and Pearson's", "[batch_chance]") {
    // All good: (a/2)^(1/n) from below and 1 from above; none good: the mirror image.
    const BatchChance all = batch_chance(10, 10, 1), none = batch_chance(0, 10, 1);
    CHECK_THAT(all.share_low, WithinRel(std::pow(0.025, 0.1), 1e-12));
    CHECK(all.share_high == 1.0);
    CHECK(none.share_low == 0.0);
    CHECK_THAT(none.share_high, WithinRel(1.0 - std::pow(0.025, 0.1), 1e-12));
    // At the limits the tail of the binomial distribution holds 2.5 %: n = 2, k = 1 by hand.
    const BatchChance half = batch_chance(1, 2, 1);
    CHECK_THAT(1.0 - std::pow(1.0 - half.share_low, 2), WithinRel(0.025, 1e-12));
    CHECK_THAT(1.0 - std::pow(half.share_high, 2), WithinRel(0.025, 1e-12));
}

TEST_CASE("what cannot be counted is refused", "[batch_chance]") {
    CHECK_THROWS_WITH(batch_chance(3, 2, 0),
                      "good: must be at most 2, got 3\npieces: must be at least 1, got 0");
    CHECK_THROWS_AS(batch_chance(0, 0, 1), InvalidInput);
}

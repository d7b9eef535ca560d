#include <cstdint>

#include "catch.hpp"
#include "drawn/blade_relations.hpp"

using namespace drawn;

namespace {

/// A draw of count_blade_misses that once answered wrongly.
struct Mended {
    std::uint64_t seed;
    int number;
};

BladesDraw draw_again(const Mended& mended) {
    constexpr int rows = 3;
    Chance chance(mended.seed);
    const auto arrangement = [](int i) {
        return kArrangements[static_cast<std::size_t>(i) % kArrangements.size()];
    };
    for (int i = 0; i < mended.number; ++i) pass_over(chance, arrangement(i), rows);
    return draw_blades(chance, arrangement(mended.number), rows);
}

void check_relations(const Mended& mended) {
    const BladesDraw draw = draw_again(mended);
    for (const BladesRelation& relation : blade_relations()) {
        CAPTURE(mended.seed, mended.number, relation.claim);
        CHECK(relation.misses(draw) == 0);
    }
}

}  // namespace

// Each kept the other from its rest: it let go where the other bore, and the other where it did.
TEST_CASE("blades that bear one for the other seat together", "[blades][action][property]") {
    for (const int number : {193, 243, 478}) check_relations({6, number});
}

// Its flat was taken for one in the dip beside another flat that bears.
TEST_CASE("a flat that reaches deeper than one that bears is not in its dip",
          "[blades][action][property]") {
    check_relations({5, 102});
}

// What holds the face between the two ends a dip.
TEST_CASE("a flat far ahead of one that bears stands out of the face behind a kick",
          "[blades][action][property]") {
    for (const Mended mended : {Mended{5, 2493}, Mended{6, 1133}, Mended{6, 1672}}) {
        check_relations(mended);
    }
}

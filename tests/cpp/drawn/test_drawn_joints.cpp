#include "catch.hpp"
#include "drawn/relations.hpp"

using namespace drawn;

TEST_CASE("drawn joints keep every relation, whatever their kick", "[action][property]") {
    Chance chance(2026);
    int both = 0;
    for (int i = 0; i < 500; ++i) {
        const Draw draw = draw_with_angles(chance, 4);
        both += two_touches(draw);
        for (const Relation& relation : relations()) {
            CAPTURE(i, relation.claim);
            CHECK(relation.misses(draw) == 0);
        }
    }
    // Enough of them have body and kick bear together.
    CHECK(both > 50);
}

TEST_CASE("body and kick that share a force over a flat, or to either side, are found",
          "[action][regression]") {
    // The pair bears far from where the body alone would, or on the other side of the kick.
    for (const std::uint64_t start : {1344617324242708074U, 6441971314814712746U}) {
        Chance chance(start);
        const Draw draw = draw_with_angles(chance, 16);
        for (const Relation& relation : relations()) {
            CAPTURE(start, relation.claim);
            CHECK(relation.misses(draw) == 0);
        }
    }
}

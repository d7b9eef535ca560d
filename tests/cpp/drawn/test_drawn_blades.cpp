#include "catch.hpp"
#include "drawn/blade_relations.hpp"

using namespace drawn;

TEST_CASE("drawn designs of several blades keep every relation", "[blades][action][property]") {
    Chance chance(2027);
    for (int i = 0; i < 30; ++i) {
        const Arrangement& arrangement = kArrangements[static_cast<std::size_t>(i % 5)];
        const BladesDraw draw = draw_blades(chance, arrangement, 2);
        for (const BladesRelation& relation : blade_relations()) {
            CAPTURE(i, arrangement.words, relation.claim);
            CHECK(relation.misses(draw) == 0);
        }
    }
}

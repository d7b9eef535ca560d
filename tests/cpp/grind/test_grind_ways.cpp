#include "backspring/check/check.hpp"
#include "backspring/grind/grind_ways.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("every way to a pull gives it, and each row is a check of the ground spring",
          "[shop][property]") {
    Design design = designs::heron();
    design.targets = {.pull_low_n = 1.0,
                      .pull_high_n = {},
                      .yield_margin = 1.0,
                      .reading_mm = {},
                      .openings = {},
                      .edge_gap_mm = {}};
    const double wanted = 0.9 * *grind_row(design, 0.0).peak_pull_n;
    const std::vector<GrindWay> ways = ways_to_pull(design, wanted);
    REQUIRE(ways.size() == 5);
    for (const GrindWay& way : ways) {
        CAPTURE(static_cast<int>(way.face), way.region.from_mm);
        REQUIRE(way.after);
        CHECK_THAT(*way.after->peak_pull_n, WithinRel(wanted, 1e-6));
        const Check after = check(grind(design, {way.face, way.after->removed_mm, way.region}));
        CHECK(*way.after->yield_margin == *after.travel.yield_margin);
        REQUIRE(way.after->targets.size() == after.targets.size());
        for (std::size_t i = 0; i < after.targets.size(); ++i) {
            CHECK(way.after->targets[i].name == after.targets[i].name);
            CHECK(way.after->targets[i].met == after.targets[i].met);
        }
    }
    // The pad takes preload with it and so keeps the most margin. Off the whole back the spring
    // gives behind the middle pin too; ground ahead of the pin alone, the root pays.
    const auto margin = [&](std::size_t i) { return *ways[i].after->yield_margin; };
    CHECK(margin(4) > margin(0));
    CHECK(margin(0) > margin(2));
    CHECK(margin(2) > margin(1));
}

TEST_CASE("a way that cannot give the pull says why", "[shop][property]") {
    const Design design = designs::heron();
    for (const GrindWay& way : ways_to_pull(design, 2.0 * *grind_row(design, 0.0).peak_pull_n)) {
        CHECK_FALSE(way.after);
        CHECK(way.refused.value().code == NoticeCode::grind_too_weak);
    }
}

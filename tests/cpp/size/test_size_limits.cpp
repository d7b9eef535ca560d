#include <cmath>
#include <string>
#include <vector>

#include "../sensitivity/figures_of.hpp"
#include "backspring/core/error.hpp"
#include "backspring/size/size.hpp"
#include "catch.hpp"
#include "designs.hpp"
#include "measures.hpp"

using namespace backspring;

TEST_CASE("what cannot be had comes with its limits", "[shop][property]") {
    const Design design = designs::heron();
    SECTION("a bound") {
        const SizeResult result =
            size(design, {.pull_n = 30.0, .yield_margin = 1.0}, {between("fit.preload", 0.3, 0.9)});
        REQUIRE(result.nearest);
        REQUIRE(result.limits.size() == 1);
        CHECK(in_short(result.limits[0]) == "greatest-size: key fit.preload, size 0.9 mm");
        CHECK_THAT(result.nearest->sizes_mm[0], WithinRel(0.9, 1e-9));
    }
    SECTION("the margin") {
        const SizeResult result =
            size(design, {.pull_n = 15.0, .yield_margin = 1.0}, {measure("fit.preload")});
        REQUIRE(result.nearest);
        REQUIRE(result.limits.size() == 1);
        CHECK(in_short(result.limits[0]) == "margin-at-limit: margin 1");
        CHECK_THAT(figures_of(result.nearest->design)["yield_margin"], WithinRel(1.0, 1e-6));
        CHECK(*result.nearest->pull_n < 15.0);
    }
    SECTION("a margin out of reach") {
        const SizeResult result =
            size(design, {.pull_n = 10.0, .yield_margin = 3.0}, {measure("spring.thickness")});
        REQUIRE(result.nearest);
        REQUIRE(result.limits.size() == 1);
        CHECK(result.limits[0].code == NoticeCode::margin_out_of_reach);
        CHECK_THAT(result.limits[0].parameters.at(0).value, WithinAbs(1.1624, 1e-4));
    }
    SECTION("two measures") {
        const SizeTarget target{.pull_n = 15.0, .yield_margin = 1.2};
        const SizeResult result =
            size(design, target, {measure("spring.thickness"), measure("fit.preload")});
        REQUIRE(result.nearest);
        REQUIRE(result.limits.size() == 2);
        CHECK(in_short(result.limits[0]) == "margin-at-limit: margin 1.2");
        CHECK(in_short(result.limits[1]) == "least-size: key fit.preload, size 0.36 mm");
        CHECK_THAT(result.nearest->yield_margin, WithinRel(1.2, 1e-6));
        // No step along the margin brings the pull nearer: the preload is at its bound.
        CHECK_THAT(result.nearest->sizes_mm[1], WithinRel(0.36, 1e-6));
    }
    SECTION("stock sizes") {
        const SizeResult result =
            size(design, {.pull_n = 10.0, .yield_margin = {}},
                 {in_stock("spring.width", {2.0, 2.5}), in_stock("fit.preload", {0.5, 0.7})});
        CHECK(result.answers.empty());
        REQUIRE(result.nearest);
        REQUIRE(result.limits.size() == 2);
        const auto& sizes = result.nearest->sizes_mm;
        for (const double width : {2.0, 2.5}) {
            for (const double preload : {0.5, 0.7}) {
                Design other = design;
                other.spring = with_width(other.spring, width);
                other.own().fit.preload_mm = preload;
                const double pull = figures_of(other)["peak_pull_n"];
                CHECK(std::abs(*result.nearest->pull_n - 10.0) <= std::abs(pull - 10.0));
                if (sizes == std::vector{width, preload}) CHECK(pull == *result.nearest->pull_n);
            }
        }
        CHECK(result.limits[0].code == NoticeCode::stock_sizes);
        CHECK(result.limits[1].names.at("key") == "fit.preload");
    }
    SECTION("no size that works") {
        // Half a millimetre of steel has no room for its pin holes.
        const SizeResult result = size(design, {.pull_n = 10.0, .yield_margin = {}},
                                       {in_stock("spring.thickness", {0.5})});
        CHECK_FALSE(result.nearest);
        REQUIRE(result.limits.size() == 2);
        CHECK(result.limits[0].code == NoticeCode::none_works);
        CHECK(result.limits[1].names.at("key") == "spring.pin_hole");
    }
    SECTION("a rule of the design") {
        // The pin hole opens before the spring is weak enough.
        const SizeResult result = size(design, {.pull_n = 0.5, .yield_margin = {}},
                                       {between("spring.thickness", 0.5, 4.0)});
        REQUIRE(result.nearest);
        REQUIRE(result.limits.size() == 1);
        CHECK(result.limits[0].code == NoticeCode::breaks_rule);
        CHECK(result.limits[0].names.at("key") == "spring.pin_hole");
    }
}

TEST_CASE("a margin that turns back below the wanted one is told at its top", "[shop][property]") {
    // A thin station carries the worst stress itself, a thick one loads the others: in between lies
    // the most margin that this station can give.
    SizeDimension station = between("spring.thickness", 2.0, 4.5);
    station.station_mm = 7.0;
    const auto margin = [&](double mm) {
        return figures_of(with_size(designs::heron(), station, mm))["yield_margin"];
    };
    double most = 0.0, at = 0.0;
    for (double mm = 2.0; mm <= 4.5; mm += 0.01) {
        if (margin(mm) > most) most = margin(mm), at = mm;
    }
    REQUIRE((at > 2.05 && at < 4.45));
    const SizeTarget beyond{.pull_n = {}, .yield_margin = 1.01 * most};
    const SizeResult result = size(designs::heron(), beyond, {station});
    CHECK(result.answers.empty());
    REQUIRE(result.nearest);
    CHECK(result.nearest->yield_margin >= most);
    CHECK_THAT(result.nearest->yield_margin, WithinRel(most, 1e-3));
    CHECK_THAT(result.nearest->sizes_mm[0], WithinAbs(at, 0.02));
    REQUIRE_FALSE(result.limits.empty());
    CHECK(result.limits[0].code == NoticeCode::margin_out_of_reach);
    // Below the top it is met on either side of it.
    const SizeResult met =
        size(designs::heron(), {.pull_n = {}, .yield_margin = 0.99 * most}, {station});
    REQUIRE(met.answers.size() == 2);
    for (const SizeAnswer& each : met.answers) {
        CHECK_THAT(each.yield_margin, WithinRel(0.99 * most, 1e-9));
        CHECK_THAT(margin(each.sizes_mm[0]), WithinRel(0.99 * most, 1e-9));
    }
}

TEST_CASE("more stock than can be tried is refused", "[shop][bad input]") {
    std::vector<double> many;
    for (int i = 0; i <= 1000; ++i) many.push_back(1.0 + 1e-3 * i);
    CHECK_THROWS_WITH(size(designs::heron(), {.pull_n = 10.0, .yield_margin = {}},
                           {in_stock("spring.width", many)}),
                      "stock: must give at most 1000 combinations, got 1001");
}

TEST_CASE("sizing refuses what it cannot understand", "[shop][bad input]") {
    const Design design = designs::heron();
    const SizeTarget pull{.pull_n = 10.0, .yield_margin = {}};
    const SizeTarget both{.pull_n = 10.0, .yield_margin = 1.2};
    struct Row {
        SizeTarget target;
        std::vector<SizeDimension> dimensions;
        const char* message;
    };
    SizeDimension stray = measure("spring.thickness"), width = measure("spring.width");
    stray.station_mm = 8.0;
    width.station_mm = 7.0;
    const Row rows[] = {
        {{}, {measure("fit.preload")}, "pull: give a pull, a yield margin or both to size for"},
        {{.pull_n = -1.0, .yield_margin = {}},
         {measure("fit.preload")},
         "pull: must be greater than 0 N, got -1 N"},
        {{.pull_n = {}, .yield_margin = 0.0},
         {measure("fit.preload")},
         "yield_margin: must be greater than 0, got 0"},
        {pull, {}, "vary: must name at least one dimension"},
        {pull, {measure("tang.open")}, "tang.open: cannot be sized: known are spring.thickness"},
        {both, {measure("fit.preload"), measure("fit.preload")}, "fit.preload: is given twice"},
        {pull, {stray}, "spring.thickness: has no station at 8 mm, known are -38 mm, -4 mm"},
        {pull, {width}, "spring.width: has no stations: only spring.thickness has"},
        {pull,
         {between("fit.preload", 0.9, 0.3)},
         "fit.preload: bounds must rise, got 0.9 mm to 0.3 mm"},
        {pull, {between("fit.preload", 0.0, 1.0)}, "fit.preload: must be greater than 0 mm"},
        {pull, {in_stock("spring.width", {-2.0})}, "spring.width: must be greater than 0 mm"},
        {pull,
         {measure("fit.preload"), measure("spring.width")},
         "vary: two free dimensions need both a pull and a yield margin"},
        {both,
         {measure("fit.preload"), measure("spring.width"), measure("tang.pivot")},
         "vary: at most two dimensions can be free; give the others stock sizes"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.message);
        CHECK_THROWS_WITH(size(design, row.target, row.dimensions), ContainsSubstring(row.message));
    }
    Design bare = design;
    bare.own().blade.nail_nick_mm.reset();
    CHECK_THROWS_WITH(size(bare, pull, {measure("fit.preload")}),
                      ContainsSubstring("blade.nail_nick: missing: a pull is felt at the nail"));
}

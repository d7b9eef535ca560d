#include <cmath>

#include "../sensitivity/figures_of.hpp"
#include "backspring/size/size.hpp"
#include "catch.hpp"
#include "designs.hpp"
#include "measures.hpp"

using namespace backspring;

namespace {

void require_answers_hold(const SizeResult& result, const SizeTarget& target) {
    REQUIRE_FALSE(result.answers.empty());
    CHECK(result.limits.empty());
    CHECK_FALSE(result.nearest);
    for (const SizeAnswer& answer : result.answers) {
        auto checked = figures_of(answer.design);
        if (target.pull_n) CHECK_THAT(checked["peak_pull_n"], WithinRel(*target.pull_n, 1e-6));
        if (target.yield_margin)
            CHECK(checked["yield_margin"] >= *target.yield_margin * (1 - 1e-6));
        CHECK_THAT(answer.yield_margin, WithinRel(checked["yield_margin"], 1e-9));
    }
}

/// A strip so slender that shear hardly counts, no friction: the closed forms of a cantilever.
Design slender() {
    Design design = designs::dunlin();
    design.spring.elastic.poisson = 0.0;
    design.spring.thickness = {{0.0, 1.0}};
    design.friction = {};
    return design;
}

}  // namespace

TEST_CASE("one measure is found for a pull, and check agrees", "[shop][property]") {
    const auto& [name, design] = GENERATE(from_range(designs::all()));
    CAPTURE(name);
    const double pull = 0.9 * figures_of(design)["peak_pull_n"];
    for (const char* key :
         {"spring.thickness", "fit.preload", "spring.width", "tang.pivot", "spring.length"}) {
        CAPTURE(key);
        const SizeTarget target{.pull_n = pull, .yield_margin = {}};
        require_answers_hold(size(design, target, {measure(key)}), target);
    }
}

TEST_CASE("a margin alone is met exactly", "[shop][property]") {
    const Design design = designs::heron();
    const SizeTarget target{.pull_n = {}, .yield_margin = 1.2};
    const SizeResult result = size(design, target, {measure("fit.preload")});
    REQUIRE(result.answers.size() == 1);
    CHECK_THAT(figures_of(result.answers[0].design)["yield_margin"], WithinRel(1.2, 1e-6));
}

TEST_CASE("pull goes as the cube of thickness and stress as thickness", "[shop][closed form]") {
    // Uniform clamped strip at a given lift: P = 3 E I v/a^3, stress = 3 E t v/(2 a^2). Thickness
    // changes slopes and so where the tang bears by nothing: both are exact but for shear, which is
    // (t/2a)^2 (1 + nu) 6/5 of the deflection: 3e-4 at 1 mm, 1e-3 at 1.26 mm.
    const Design design = slender();
    const auto before = figures_of(design);
    const double twice = 2.0 * before.at("peak_pull_n");
    const SizeResult result =
        size(design, {.pull_n = twice, .yield_margin = {}}, {measure("spring.thickness")});
    REQUIRE(result.answers.size() == 1);
    const SizeAnswer& answer = result.answers[0];
    CHECK_THAT(answer.sizes_mm[0], WithinRel(std::cbrt(2.0), 1e-3));
    const double ratio =
        figures_of(answer.design)["travel_peak_stress_mpa"] / before.at("travel_peak_stress_mpa");
    CHECK_THAT(ratio, WithinRel(answer.sizes_mm[0], 1e-3));
}

TEST_CASE("pull goes as width, and margin does not", "[shop][closed form]") {
    const Design design = designs::heron();
    const auto before = figures_of(design);
    const SizeResult result =
        size(design, {.pull_n = 1.25 * before.at("peak_pull_n"), .yield_margin = {}},
             {measure("spring.width")});
    REQUIRE(result.answers.size() == 1);
    CHECK_THAT(result.answers[0].sizes_mm[0], WithinRel(1.25 * 2.3, 1e-9));
    CHECK_THAT(result.answers[0].yield_margin, WithinRel(before.at("yield_margin"), 1e-9));
}

TEST_CASE("one station alone can be sized", "[shop][property]") {
    SizeDimension station = measure("spring.thickness");
    station.station_mm = 25.0;
    const SizeTarget target{.pull_n = 11.0, .yield_margin = {}};
    const SizeResult result = size(designs::heron(), target, {station});
    require_answers_hold(result, target);
    const Profile& profile = result.answers[0].design.spring.thickness;
    CHECK(profile[4].thickness_mm == result.answers[0].sizes_mm[0]);
    CHECK(profile[3].thickness_mm == 3.1);
}

TEST_CASE("two measures meet pull and margin both", "[shop][property]") {
    const SizeTarget target{.pull_n = 10.0, .yield_margin = 1.2};
    for (const auto& dimensions : {std::vector{measure("fit.preload"), measure("spring.width")},
                                   std::vector{measure("fit.preload"), measure("spring.length")},
                                   std::vector{measure("tang.pivot"), measure("spring.width")}}) {
        CAPTURE(dimensions[0].key, dimensions[1].key);
        const SizeResult result = size(designs::heron(), target, dimensions);
        require_answers_hold(result, target);
        CHECK_THAT(result.answers[0].yield_margin, WithinRel(1.2, 1e-6));
    }
}

TEST_CASE("margin to spare on a bound answers too", "[shop][property]") {
    // With at most 0.5 mm of preload the margin is above 1.2 wherever the pull is right.
    const SizeTarget target{.pull_n = 10.0, .yield_margin = 1.2};
    const SizeResult result =
        size(designs::heron(), target, {between("fit.preload", 0.3, 0.5), measure("spring.width")});
    require_answers_hold(result, target);
    REQUIRE(result.answers.size() == 2);
    for (const SizeAnswer& answer : result.answers) CHECK(answer.yield_margin > 1.25);
    CHECK_THAT(result.answers[0].sizes_mm[0], WithinRel(0.3, 1e-9));
    CHECK_THAT(result.answers[1].sizes_mm[0], WithinRel(0.5, 1e-9));
}

TEST_CASE("several sizes can give one margin", "[shop][property]") {
    // Thin: the pin hole weakens; thick: the stress of the same lift grows. Both sides answer.
    const SizeTarget target{.pull_n = {}, .yield_margin = 1.15};
    const SizeResult result = size(designs::heron(), target, {measure("spring.thickness")});
    require_answers_hold(result, target);
    REQUIRE(result.answers.size() == 2);
    CHECK(result.answers[0].sizes_mm[0] < 3.14);
    CHECK(result.answers[1].sizes_mm[0] > 3.15);
}

TEST_CASE("stock sizes are tried one by one", "[shop][property]") {
    const SizeTarget target{.pull_n = 12.0, .yield_margin = 1.0};
    const SizeResult result =
        size(designs::heron(), target,
             {measure("spring.thickness"), in_stock("spring.width", {2.0, 2.5, 3.0})});
    require_answers_hold(result, target);
    REQUIRE(result.answers.size() == 3);
    CHECK(result.answers[1].sizes_mm[1] == 2.5);
    CHECK(result.answers[1].design.spring.width_mm == 2.5);
}

TEST_CASE("stock sizes alone give the nearest", "[shop][property]") {
    const SizeResult result = size(designs::heron(), {.pull_n = 12.0, .yield_margin = 1.0},
                                   {in_stock("spring.width", {1.5, 2.0, 2.5, 3.0})});
    CHECK(result.answers.empty());
    REQUIRE(result.nearest);
    CHECK(result.nearest->sizes_mm[0] == 2.5);
    REQUIRE(result.limits.size() == 1);
    CHECK(in_short(result.limits[0]) == "stock-sizes: key spring.width, size 2.5 mm, sizes 4");
}

TEST_CASE("of stock sizes alone those are answers that have the margin", "[shop][property]") {
    const Design design = designs::heron();
    const std::vector<double> preloads{0.6, 0.8, 1.0, 1.2};
    const double wanted = figures_of(design)["yield_margin"];
    const SizeResult found =
        size(design, {.pull_n = {}, .yield_margin = wanted}, {in_stock("fit.preload", preloads)});
    std::vector<double> good;
    for (const double preload : preloads) {
        Design other = design;
        other.own().fit.preload_mm = preload;
        if (figures_of(other)["yield_margin"] >= wanted) good.push_back(preload);
    }
    REQUIRE(good.size() == 2);
    REQUIRE(found.answers.size() == good.size());
    for (std::size_t i = 0; i < good.size(); ++i) {
        CHECK(found.answers[i].sizes_mm == std::vector{good[i]});
    }
}

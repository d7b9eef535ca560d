#include <cmath>

#include "backspring/action/end_stop.hpp"
#include "backspring/design/joint_of.hpp"
#include "backspring/grind/grind_depth.hpp"
#include "backspring/grind/grind_table.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

double pull_of(const Design& design) { return *grind_row(design, 0.0).peak_pull_n; }

Notice refusal(const Design& design, GrindFace face, double pull_n) {
    try {
        (void)depth_for_pull(design, face, std::nullopt, pull_n);
    } catch (const NoConvergence& error) {
        return error.notice().value();
    }
    FAIL("not refused");
    return {};
}

std::optional<double> number(const Notice& notice, const std::string& name) {
    for (const Parameter& each : notice.parameters) {
        if (each.name == name) return each.value;
    }
    return std::nullopt;
}

}  // namespace

TEST_CASE("the depth for a pull gives that pull", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        for (const GrindFace face : {GrindFace::back, GrindFace::belly, GrindFace::pad}) {
            const double deepest = 0.8 * grind_limits(design, face, std::nullopt).front().depth_mm;
            const double most = pull_of(design);
            const double least = pull_of(grind(design, {face, deepest, {}}));
            for (const double share : {0.0, 0.1, 0.5, 0.9, 1.0}) {
                CAPTURE(name, static_cast<int>(face), share);
                const double wanted = std::lerp(most, least, share);
                const double depth = depth_for_pull(design, face, std::nullopt, wanted);
                if (share == 0.0) CHECK(depth == 0.0);
                CHECK_THAT(pull_of(grind(design, {face, depth, {}})), WithinRel(wanted, 1e-6));
            }
        }
    }
}

TEST_CASE("a strip's depth for a pull follows the cube root", "[shop][closed-form]") {
    Design strip = designs::dunlin();
    strip.spring.thickness = {{0.0, 0.5}};
    const double depth = depth_for_pull(strip, GrindFace::back, std::nullopt, 0.5 * pull_of(strip));
    // Pull goes with t^3; shear's share of 0.0002 is left out of the closed form.
    CHECK_THAT(0.5 - depth, WithinRel(0.5 * std::cbrt(0.5), 2e-4));
}

TEST_CASE("the preload for a pull gives that pull", "[shop][property]") {
    for (auto [name, design] : designs::all()) {
        CAPTURE(name);
        const double wanted = 1.05 * pull_of(design);
        const auto way = preload_for_pull(design, wanted);
        REQUIRE(way.has_value());
        design.own().fit.preload_mm = way->preload_mm;
        CHECK_THAT(pull_of(design), WithinRel(wanted, 1e-6));
        CHECK(way->yield_margin == grind_row(design, 0.0).yield_margin);
        const bool pinned = design.spring.support.kind == SupportKind::two_pins;
        REQUIRE(way->rear_pin_offset_mm.has_value() == pinned);
        if (pinned) {
            CHECK_THAT(*way->rear_pin_offset_mm, WithinRel(way->preload_mm * 34.0 / 32.0, 1e-14));
        }
    }
}

TEST_CASE("what grinding cannot give is refused, with what can", "[shop][abuse]") {
    const Notice more = refusal(designs::heron(), GrindFace::back, 12.0);
    CHECK(more.code == NoticeCode::grind_too_weak);
    CHECK_THAT(number(more, "pull_now").value(), WithinAbs(11.71, 0.005));
    CHECK_THAT(number(more, "preload").value(), WithinAbs(0.9512, 5e-5));
    CHECK(number(more, "preload_now") == 0.9);
    CHECK_THAT(number(more, "hole_moved").value(), WithinAbs(0.0544, 5e-5));
    CHECK(number(refusal(designs::heron(), GrindFace::back, 20.0), "yield_margin").value() < 1.0);
    const Notice hole = refusal(designs::heron(), GrindFace::back, 5.0);
    CHECK(hole.code == NoticeCode::grind_limit);
    CHECK(hole.names.at("end") == "hole-opens");
    CHECK(number(hole, "hole") == -34.0);
    CHECK_FALSE(number(hole, "preload"));
    CHECK(refusal(designs::heron(), GrindFace::pad, 2.0).code == NoticeCode::grind_lets_go);
    CHECK_FALSE(number(refusal(designs::dunlin(), GrindFace::back, 12.0), "hole_moved"));
}

TEST_CASE("a pull that makes no sense is invalid", "[shop][abuse]") {
    Design design = designs::heron();
    for (const double pull : {0.0, -5.0, std::nan(""), 1e9}) {
        CHECK_THROWS_AS(depth_for_pull(design, GrindFace::back, std::nullopt, pull), InvalidInput);
        CHECK_THROWS_AS(preload_for_pull(design, pull), InvalidInput);
    }
    design.own().blade.nail_nick_mm.reset();
    CHECK_THROWS_AS(depth_for_pull(design, GrindFace::back, std::nullopt, 5.0), InvalidInput);
}

// Less than half as thick as its stop is high no design may be; ground so far, it bears at the
// edge.
TEST_CASE("a stop that reaches above a ground back is no limit to a depth", "[shop][property]") {
    Design design = designs::dunlin();
    design.own().fit.stop = {.place = StopPlace::height, .height_mm = 2.5};
    const double wanted = 0.05 * pull_of(design);
    const double depth = depth_for_pull(design, GrindFace::back, std::nullopt, wanted);
    const Design ground = grind(design, {GrindFace::back, depth, {}});
    CHECK(ground.spring.thickness.back().thickness_mm < 1.2);
    CHECK_THAT(pull_of(ground), WithinRel(wanted, 1e-6));
    const Design edge = [&] {
        Design other = design;
        other.own().fit.stop = {.place = StopPlace::back};
        return grind(other, {GrindFace::back, depth, {}});
    }();
    CHECK(open_on_stop(make_joint(ground)).force_n == open_on_stop(make_joint(edge)).force_n);
}

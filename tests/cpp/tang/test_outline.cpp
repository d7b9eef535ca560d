#include <cmath>
#include <numbers>
#include <vector>

#include "backspring/tang/outline.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

designs::Point on(const Arc& arc, double normal) {
    return {arc.u_mm + arc.radius_mm * std::cos(normal),
            arc.w_mm + arc.radius_mm * std::sin(normal)};
}

/// Distance from the pivot of the tangent at an arc's end.
double support(const Arc& arc, double normal) {
    const auto p = on(arc, normal);
    return p.x * std::cos(normal) + p.y * std::sin(normal);
}

std::vector<Outline> outlines() {
    std::vector<Outline> made;
    for (const auto& [name, design] : designs::all())
        made.push_back(make_outline(design.own().tang, 9.0));
    return made;
}

}  // namespace

TEST_CASE("normals turn once from front to rear without a gap", "[tang][property]") {
    for (const Outline& outline : outlines()) {
        CHECK(outline.body.front().from_rad == 0.0);
        for (std::size_t i = 0; i < outline.body.size(); ++i) {
            CHECK(outline.body[i].to_rad > outline.body[i].from_rad);
            if (i == 0) continue;
            CHECK_THAT(outline.body[i].from_rad, WithinAbs(outline.body[i - 1].to_rad, 1e-12));
        }
        CHECK_THAT(outline.body.back().to_rad, WithinAbs(2.0 * std::numbers::pi, 1e-12));
    }
}

TEST_CASE("neighbouring arcs share a tangent", "[tang][property]") {
    for (const Outline& outline : outlines()) {
        for (std::size_t i = 1; i < outline.body.size(); ++i) {
            const double joint = outline.body[i].from_rad;
            CHECK_THAT(support(outline.body[i], joint),
                       WithinAbs(support(outline.body[i - 1], joint), 1e-12));
        }
    }
}

TEST_CASE("faces stand at their distances from the pivot", "[tang][closed form]") {
    const Outline outline = make_outline(designs::heron().own().tang, 9.0);
    REQUIRE(outline.body.size() == 4);
    CHECK_THAT(support(outline.body[0], 0.5 * std::numbers::pi), WithinRel(4.5, 1e-14));
    CHECK_THAT(support(outline.body[1], std::numbers::pi), WithinRel(4.62, 1e-14));
    CHECK_THAT(support(outline.body[2], 1.5 * std::numbers::pi), WithinRel(4.6, 1e-14));
    CHECK(on(outline.body[0], 0.0).x == 5.0);
    CHECK(on(outline.body[3], 1.5 * std::numbers::pi).x == 9.0);
    CHECK_FALSE(outline.kick);
}

TEST_CASE("a round end joins its corners without a flat", "[tang][closed form]") {
    const Tang tang = designs::wren().own().tang;
    const Outline outline = make_outline(tang, 9.0);
    REQUIRE(outline.body.size() == 5);
    for (std::size_t i = 2; i <= 3; ++i) {
        const double joint = outline.body[i].from_rad;
        const designs::Point before = on(outline.body[i - 1], joint),
                             after = on(outline.body[i], joint);
        CHECK_THAT(before.x, WithinAbs(after.x, 1e-12));
        CHECK_THAT(before.y, WithinAbs(after.y, 1e-12));
    }
    CHECK(outline.body[2].radius_mm == round_end_radius_mm(tang));
    CHECK_THAT(support(outline.body[1], 0.5 * std::numbers::pi), WithinRel(tang.open_mm, 1e-14));
    CHECK_THAT(support(outline.body[3], 1.5 * std::numbers::pi), WithinRel(tang.closed_mm, 1e-14));
}

TEST_CASE("the kick's nose stands its height beyond the closed face", "[tang][closed form]") {
    const Outline outline = make_outline(designs::plover().own().tang, 9.0);
    REQUIRE(outline.kick);
    const designs::Point nose = on(*outline.kick, 1.5 * std::numbers::pi);
    CHECK_THAT(nose.y, WithinRel(-4.8, 1e-14));
    CHECK_THAT(nose.x, WithinRel(8.0, 1e-14));
}

TEST_CASE("the swept radius reaches the farthest corner or the kick", "[tang][closed form]") {
    const Outline square = make_outline(designs::heron().own().tang, 9.0);
    CHECK_THAT(swept_radius_mm(square), WithinRel(std::hypot(3.92, 3.9) + 0.7, 1e-14));
    const Outline kicked = make_outline(designs::plover().own().tang, 9.0);
    CHECK_THAT(swept_radius_mm(kicked), WithinRel(std::hypot(8.0, 4.3) + 0.5, 1e-14));
}

TEST_CASE("no point of the rear lies outside the swept radius", "[tang][property]") {
    for (const Outline& outline : outlines()) {
        const double swept = swept_radius_mm(outline);
        for (std::size_t i = 1; i + 1 < outline.body.size(); ++i) {
            const Arc& arc = outline.body[i];
            for (int k = 0; k <= 100; ++k) {
                const auto p = on(arc, std::lerp(arc.from_rad, arc.to_rad, k / 100.0));
                CHECK(std::hypot(p.x, p.y) <= swept + 1e-12);
            }
        }
    }
}

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "backspring/core/angle.hpp"
#include "backspring/tang/envelope.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

TurnedOutline turned(const Outline& outline, double blade_angle_deg) {
    return {outline.body, radians(blade_angle_deg) - std::numbers::pi};
}

/// Places along the whole outline at a blade angle: arcs, and flats between their ends.
std::vector<designs::Point> walk(const Outline& outline, double blade_angle_deg) {
    std::vector<designs::Point> places;
    for (const Arc& arc : outline.body) {
        for (int k = 0; k <= 200; ++k) {
            const double normal = std::lerp(arc.from_rad, arc.to_rad, k / 200.0);
            const designs::Point next{arc.u_mm + arc.radius_mm * std::cos(normal),
                                      arc.w_mm + arc.radius_mm * std::sin(normal)};
            if (k == 0 && !places.empty()) {
                const designs::Point last = places.back();
                for (int j = 1; j < 200; ++j) {
                    places.push_back({std::lerp(last.x, next.x, j / 200.0),
                                      std::lerp(last.y, next.y, j / 200.0)});
                }
            }
            places.push_back(next);
        }
    }
    const double turn = radians(blade_angle_deg) - std::numbers::pi, c = std::cos(turn),
                 s = std::sin(turn);
    for (designs::Point& p : places) p = {c * p.x - s * p.y, s * p.x + c * p.y};
    return places;
}

}  // namespace

TEST_CASE("open, the top is the open face", "[tang][closed form]") {
    const Outline outline = make_outline(designs::heron().own().tang, 9.0);
    const auto top = turned(outline, 180.0).top_at(0.0);
    REQUIRE(top);
    CHECK_THAT(top->y_mm, WithinRel(4.5, 1e-14));
    CHECK_THAT(top->slope, WithinAbs(0.0, 1e-14));
}

TEST_CASE("half-stop and closed faces come up in their turn", "[tang][closed form]") {
    const Outline outline = make_outline(designs::heron().own().tang, 9.0);
    CHECK_THAT(turned(outline, 90.0).top_at(0.0)->y_mm, WithinRel(4.62, 1e-14));
    CHECK_THAT(turned(outline, 0.0).top_at(0.0)->y_mm, WithinRel(4.60, 1e-14));
    // Closed, the face reaches back from the pivot; open, its far end would lie ahead.
    CHECK(turned(outline, 0.0).top_at(-8.9));
    CHECK_FALSE(turned(outline, 0.0).top_at(-9.1));
    CHECK_FALSE(turned(outline, 180.0).top_at(5.1));
}

TEST_CASE("a face turned by an angle slopes by its tangent", "[tang][closed form]") {
    const Outline outline = make_outline(designs::heron().own().tang, 9.0);
    const auto top = turned(outline, 182.0).top_at(0.0);
    REQUIRE(top);
    CHECK_THAT(top->slope, WithinRel(std::tan(radians(2.0)), 1e-12));
    CHECK_THAT(top->y_mm, WithinRel(4.5 / std::cos(radians(2.0)), 1e-13));
}

TEST_CASE("no place of the outline lies above its top", "[tang][oracle]") {
    const double angle = GENERATE(0.0, 17.0, 45.0, 90.0, 118.0, 161.0, 180.0, -3.0);
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name, angle);
        const Outline outline = make_outline(design.own().tang, 9.0);
        double highest = 0.0;
        for (const designs::Point& place : walk(outline, angle)) {
            highest = std::max(highest, place.y);
            // Steep sides are no part of the top: there a place may stand without one.
            const auto top = turned(outline, angle).top_at(place.x);
            if (top) CHECK(top->y_mm >= place.y - 1e-9);
        }
        CHECK(highest > 4.0);
    }
}

TEST_CASE("the top lies on the outline", "[tang][oracle]") {
    const double angle = GENERATE(0.0, 17.0, 45.0, 90.0, 118.0, 161.0, 180.0, -3.0);
    for (const auto& [name, design] : designs::all()) {
        const Outline outline = make_outline(design.own().tang, 9.0);
        const std::vector<designs::Point> places = walk(outline, angle);
        for (double x = -4.5; x <= 4.5; x += 0.5) {
            CAPTURE(name, angle, x);
            const auto top = turned(outline, angle).top_at(x);
            if (!top) continue;
            double nearest = 1.0;
            for (const designs::Point& p : places) {
                nearest = std::min(nearest, std::hypot(p.x - x, p.y - top->y_mm));
            }
            CHECK(nearest < 0.04);  // half the walk's step on the longest flat
        }
    }
}

TEST_CASE("the slope of the top is its derivative", "[tang][property]") {
    constexpr double h = 1e-5;
    const Outline outline = make_outline(designs::heron().own().tang, 9.0);
    for (const double angle : {3.0, 45.0, 88.0, 130.0, 178.0}) {
        const TurnedOutline body = turned(outline, angle);
        for (const double x : {-4.0, -3.3, -1.0, 0.0, 2.0, 4.0}) {
            CAPTURE(angle, x);
            const auto before = body.top_at(x - h), at = body.top_at(x), after = body.top_at(x + h);
            if (!before || !after) continue;
            // h^2/6 times the third derivative of a 0.7 mm arc, and rounding over h.
            CHECK_THAT(at->slope, WithinAbs((after->y_mm - before->y_mm) / (2.0 * h), 1e-8));
        }
    }
}

TEST_CASE("a place found by its slope has that slope", "[tang][property]") {
    const Outline outline = make_outline(designs::heron().own().tang, 9.0);
    const TurnedOutline body = turned(outline, 45.0);
    REQUIRE(body.level_arc() == 2);  // halfway between closed and half-stop their corner is up
    const SurfacePoint corner = body.at_slope(2, 0.3);
    CHECK(corner.slope == 0.3);
    const auto top = body.top_at(corner.x_mm);
    REQUIRE(top);
    CHECK_THAT(top->y_mm, WithinRel(corner.y_mm, 1e-13));
    CHECK_THAT(top->slope, WithinRel(0.3, 1e-12));
    CHECK(body.radius_mm(2) == 0.7);
}

TEST_CASE("an arc knows the slopes it covers", "[tang][closed form]") {
    const Outline outline = make_outline(designs::heron().own().tang, 9.0);
    const TurnedOutline body = turned(outline, 45.0);
    // The corner's normals reach 45 degrees to either side of straight up.
    CHECK_THAT(body.lowest_slope(2), WithinRel(-1.0, 1e-13));
    CHECK_THAT(body.highest_slope(2), WithinRel(1.0, 1e-13));
}

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "backspring/core/angle.hpp"
#include "backspring/tang/drawn_outline.hpp"
#include "backspring/tang/envelope.hpp"
#include "catch.hpp"
#include "designs.hpp"
#include "drawn_shapes.hpp"

using namespace backspring;

namespace {

constexpr double kPi = std::numbers::pi;

Tang drawn(std::vector<OutlinePoint> outline) {
    Tang tang;
    tang.pivot_mm = 32.0;
    return tang_with_outline(tang, std::move(outline));
}

std::vector<OutlinePoint> reversed(std::vector<OutlinePoint> rows) {
    std::ranges::reverse(rows);
    for (std::size_t i = 0; i < rows.size(); ++i) rows[i].bulge = 0.0;
    return rows;
}

}  // namespace

TEST_CASE("a square tang drawn out has the faces it was drawn with", "[tang][outline]") {
    const Tang usual = designs::heron().own().tang, tang = drawn(shapes::rows_of(usual));
    CHECK_THAT(tang.open_mm, WithinAbs(usual.open_mm, 1e-14));
    CHECK_THAT(*tang.half_stop_mm, WithinAbs(*usual.half_stop_mm, 1e-14));
    CHECK_THAT(tang.closed_mm, WithinAbs(usual.closed_mm, 1e-14));
    CHECK_THAT(rear_reach_mm(tang), WithinAbs(rear_reach_mm(usual), 1e-14));
    CHECK_THAT(front_reach_mm(tang), WithinAbs(usual.front_mm, 1e-14));
    CHECK_THAT(swept_radius_mm(make_outline(tang, 0.0)),
               WithinAbs(swept_radius_mm(make_outline(usual, 0.0)), 1e-12));
}

TEST_CASE("a drawn outline reaches as far as the usual one in every direction", "[tang][outline]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Tang usual = design.own().tang;
        const Outline was = make_outline(usual, 12.0);
        const Outline now = make_outline(drawn(shapes::rows_of(usual)), 12.0);
        for (double normal = 0.02; normal < 2.0 * kPi; normal += 0.05) {
            CHECK_THAT(reach_mm(now.body, normal), WithinAbs(reach_mm(was.body, normal), 1e-12));
        }
    }
}

TEST_CASE("a face is cut from a drawn outline along a line", "[tang][outline][properties]") {
    for (int seed = 0; seed < 20; ++seed) {
        CAPTURE(seed);
        const std::vector<OutlinePoint> rows = shapes::random_rows(seed);
        REQUIRE(flaw_of(rows) == OutlineFlaw::none);
        Tang tang = drawn(rows);
        const Outline whole = make_outline(tang, 0.0);
        tang.closed_mm -= 0.3;
        const Outline cut = make_outline(tang, 0.0);
        CHECK_THAT(reach_mm(cut.body, cut.closed_rad), WithinAbs(tang.closed_mm, 1e-12));
        for (double normal = 0.5 * kPi; normal < 1.5 * kPi; normal += 0.03) {
            // Nothing grows, and a place that is not ground off is where it was.
            const double left = reach_mm(cut.body, normal), was = reach_mm(whole.body, normal);
            CHECK(left < was + 1e-12);
            const bool beside = std::abs(normal - cut.closed_rad) > 1.2;
            if (beside) CHECK_THAT(left, WithinAbs(was, 1e-12));
        }
    }
}

TEST_CASE("a face ground is the shape drawn with that flat", "[tang][outline]") {
    // Corners of radius 1; 0.2 mm off leaves an edge where cos of the normal is 0.8.
    const double r = 1.0, half = std::sqrt(r * r - 0.8 * 0.8), edge = std::acos(0.8);
    std::vector<OutlinePoint> rows = shapes::square_rows(4.5, 4.6, r);
    Tang ground = drawn(rows);
    ground.closed_mm -= 0.2;
    rows[3].bulge = std::tan(0.25 * (0.5 * kPi - edge));
    rows[4] = {-4.6 + r - half, -4.4, 0.0};
    rows[5].w_mm = -4.4;
    const Tang anew = drawn(rows);
    CHECK_THAT(anew.closed_mm, WithinAbs(ground.closed_mm, 1e-14));
    const Outline a = make_outline(ground, 0.0), b = make_outline(anew, 0.0);
    for (double normal = 0.5 * kPi; normal < 1.5 * kPi; normal += 0.01) {
        CHECK_THAT(reach_mm(a.body, normal), WithinAbs(reach_mm(b.body, normal), 1e-12));
    }
}

TEST_CASE("arcs keep their count on both sides of a drawn face", "[tang][outline]") {
    for (int seed = 0; seed < 20; ++seed) {
        CAPTURE(seed);
        const Tang tang = drawn(shapes::random_rows(seed));
        const std::size_t count = make_outline(tang, 12.0).body.size();
        for (const double by : {-1e-5, 1e-5}) {
            Tang open = tang, closed = tang;
            open.open_mm += by;
            closed.closed_mm += by;
            CHECK(make_outline(open, 12.0).body.size() == count);
            CHECK(make_outline(closed, 12.0).body.size() == count);
        }
    }
}

TEST_CASE("a cam of many arcs reaches as its closed form says", "[tang][outline][closed form]") {
    // Radius of curvature r0 + k normal: the reach is r0 + k normal + a cos + b sin.
    const double r0 = 3.0, k = 0.35;
    const std::vector<OutlinePoint> rows = shapes::spiral_rows(r0, k, 200);
    REQUIRE(flaw_of(rows) == OutlineFlaw::none);
    const Outline outline = make_outline(drawn(rows), 0.0);
    CHECK(outline.body.size() < 210);
    const double from = shapes::kSpiralFrom, step = (1.5 * kPi - from) / 200.0;
    // An arc's even radius is off by k step/2 at its ends, which adds up to this over the cam.
    const double stepped = k * step * step * kPi / 12.0;
    const double a = shapes::spiral_centre(r0, k).x, b = shapes::spiral_centre(r0, k).y;
    for (double normal = from + 0.1; normal < 1.5 * kPi; normal += 0.07) {
        const double closed_form =
            r0 + k * (normal - from) + a * std::cos(normal) + b * std::sin(normal);
        const TurnedOutline up(outline.body, 0.5 * kPi - normal);
        CHECK_THAT(up.at_slope(up.level_arc(), 0.0).y_mm, WithinAbs(closed_form, stepped));
    }
}

TEST_CASE("flats are named by where they lie along the spring", "[tang][outline]") {
    // A flat that lies along the spring at 150 deg beside open, half-stop and closed.
    const double t = radians(120.0), d = 5.4;
    std::vector<OutlinePoint> rows{{6.0, 4.5, 0.0}};
    const auto meet = [&](double u) { return (d - u * std::cos(t)) / std::sin(t); };
    rows.push_back({(d - 4.5 * std::sin(t)) / std::cos(t), 4.5, 0.0});
    rows.push_back({-4.6, meet(-4.6), 0.0});
    rows.push_back({-4.6, -4.6, 0.0});
    rows.push_back({9.0, -4.6, 0.0});
    const DrawnFaces faces = faces_of(arcs_of(rows));
    CHECK_THAT(*faces.half_stop_mm, WithinAbs(4.6, 1e-14));
    REQUIRE(faces.others.size() == 1);
    CHECK_THAT(faces.others[0].blade_angle_deg, WithinAbs(150.0, 1e-10));
    CHECK_THAT(faces.others[0].distance_mm, WithinAbs(d, 1e-12));
}

TEST_CASE("rows that are no outline are told", "[tang][outline]") {
    const std::vector<OutlinePoint> good = shapes::square_rows(4.5, 4.6, 0.7);
    CHECK(flaw_of(good) == OutlineFlaw::none);
    CHECK(flaw_of(std::vector(good.begin(), good.begin() + 2)) == OutlineFlaw::too_few);
    CHECK(flaw_of(reversed(good)) == OutlineFlaw::not_convex);
    std::vector<OutlinePoint> moved = good, twice = good, crossed = good, not_a_number = good;
    for (OutlinePoint& point : moved) point.u_mm += 20.0;
    CHECK(flaw_of(moved) == OutlineFlaw::pivot_outside);
    twice.insert(twice.end(), good.begin(), good.end());
    CHECK(flaw_of(twice) == OutlineFlaw::not_convex);
    std::swap(crossed[0], crossed[3]);
    CHECK(flaw_of(crossed) == OutlineFlaw::not_convex);
    not_a_number[2].w_mm = std::nan("");
    CHECK(flaw_of(not_a_number) == OutlineFlaw::not_convex);
}

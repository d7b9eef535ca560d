#include <cmath>
#include <limits>

#include "backspring/check/check.hpp"
#include "backspring/check/columns.hpp"
#include "backspring/grind/grind.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

Design ground(const Design& design, GrindFace face, double depth_mm) {
    return grind(design, {face, depth_mm, {}});
}

double thickness_at(const Design& design, double x_mm) {
    return thickness_mm(design.spring.thickness, x_mm);
}

std::string refusal(const Design& design, const Cut& cut) {
    try {
        (void)grind(design, cut);
    } catch (const InvalidInput& error) {
        return error.what();
    }
    return "";
}

/// A thin strip without holes, so that shear counts for little.
Design strip(double thickness_mm) {
    Design design = designs::dunlin();
    design.spring.thickness = {{0.0, thickness_mm}};
    return design;
}

}  // namespace

TEST_CASE("a ground strip is stiff as a strip of its new thickness", "[shop][closed-form]") {
    // Cantilever with an end load: L^3/(3 E I) + L/(kappa G A), kappa = 5/6; from memory.
    const Design design = ground(strip(0.5), GrindFace::back, 0.1);
    const double e = 205000.0, g = e / (2.0 * 1.29), b = 2.3, t = 0.4, length = 32.0;
    const double bending = length * length * length / (3.0 * e * b * t * t * t / 12.0);
    const double shear = length / (5.0 / 6.0 * g * b * t);
    CHECK_THAT(check(design).stiffness_n_per_mm, WithinRel(1.0 / (bending + shear), 1e-12));
}

TEST_CASE("pull falls with the cube of thickness, stress with thickness", "[shop][closed-form]") {
    const Check thick = check(strip(0.5)), thin = check(ground(strip(0.5), GrindFace::back, 0.1));
    const double pull = *thin.strokes[0].peak_pull_n / *thick.strokes[0].peak_pull_n;
    const double stress = thin.travel.peak_stress_mpa / thick.travel.peak_stress_mpa;
    // Shear's share, 0.774 (t/L)^2, is 0.0002 and 0.0001 here: within 0.0001 of the powers.
    CHECK_THAT(pull, WithinRel(0.8 * 0.8 * 0.8, 2e-4));
    CHECK_THAT(stress, WithinRel(0.8, 2e-4));
    CHECK(pull > 0.512);
}

TEST_CASE("back and belly of a spring without holes do the same", "[shop][property]") {
    Design design = designs::heron();
    design.spring.holes.clear();
    const GrindRegion region{3.0, 20.0};
    const Design back = grind(design, {GrindFace::back, 0.3, region});
    const Design belly = grind(design, {GrindFace::belly, 0.3, region});
    for (double angle = 0.0; angle <= 180.0; angle += 15.0) {
        CHECK(contact_at(back, angle).force_n == contact_at(belly, angle).force_n);
    }
    CHECK(check(back).travel.peak_stress_mpa == check(belly).travel.peak_stress_mpa);
}

TEST_CASE("a hole stays where it is when a face is ground", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        const GrindRegion region{design.spring.thickness.front().x_mm, 20.0};
        for (const GrindFace face : {GrindFace::back, GrindFace::belly}) {
            const Design after = grind(design, {face, 0.1, region});
            CAPTURE(name);
            for (std::size_t i = 0; i < design.spring.holes.size(); ++i) {
                const Hole &a = design.spring.holes[i], &b = after.spring.holes[i];
                // Height over the face that is not ground.
                const double side = face == GrindFace::back ? 1.0 : -1.0;
                const double was = 0.5 * thickness_at(design, a.center_mm) + side * a.offset_mm;
                const double is = 0.5 * thickness_at(after, b.center_mm) + side * b.offset_mm;
                CHECK_THAT(is, WithinAbs(was, 1e-14));
            }
        }
    }
}

TEST_CASE("only the region loses steel, and a step stands at its ends", "[shop][property]") {
    const Design after = grind(designs::heron(), {GrindFace::back, 0.2, GrindRegion{5.0, 30.0}});
    for (const double x : {-38.0, -10.0, 0.0, 4.99, 30.0, 36.5}) {
        CHECK_THAT(thickness_at(after, x), WithinAbs(thickness_at(designs::heron(), x), 1e-14));
    }
    for (const double x : {5.0, 7.0, 10.0, 25.0, 29.99}) {
        CHECK_THAT(thickness_at(after, x),
                   WithinAbs(thickness_at(designs::heron(), x) - 0.2, 1e-14));
    }
    CHECK(after.own().fit.preload_mm == 0.9);
}

TEST_CASE("steel off the pad leaves the free back where it was", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Design after = ground(design, GrindFace::pad, 0.25);
        const SpringAlong was = spring_along(design, 180.0), is = spring_along(after, 180.0);
        REQUIRE(was.station_mm.size() <= is.station_mm.size());
        for (Eigen::Index i = 0; i < is.station_mm.size(); ++i) {
            const double x = is.station_mm[i];
            const double free_face = 4.5 - design.own().fit.preload_mm * x / 32.0;
            if (x < design.own().pad.start_mm) continue;
            CHECK_THAT(is.face_mm[i] + is.thickness_mm[i],
                       WithinAbs(free_face + thickness_at(design, x), 1e-12));
        }
        CHECK_THAT(after.own().fit.preload_mm,
                   WithinAbs(design.own().fit.preload_mm - 0.25, 1e-15));
        CHECK_THAT(thickness_at(design, 32.0) - thickness_at(after, 32.0), WithinAbs(0.25, 1e-14));
    }
}

TEST_CASE("two cuts make one of both depths", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        for (const GrindFace face : designs::kGrindFaces) {
            CAPTURE(name, static_cast<int>(face));
            const Check once = check(ground(design, face, 0.24));
            const Check twice = check(ground(ground(design, face, 0.12), face, 0.12));
            CHECK_THAT(twice.stiffness_n_per_mm, WithinRel(once.stiffness_n_per_mm, 1e-11));
            CHECK_THAT(twice.travel.peak_stress_mpa, WithinRel(once.travel.peak_stress_mpa, 1e-8));
        }
    }
}

TEST_CASE("nothing removed changes nothing", "[shop][property]") {
    for (const GrindFace face : designs::kGrindFaces) {
        const Design after = ground(designs::heron(), face, 0.0);
        CHECK(after.spring.thickness.size() == designs::heron().spring.thickness.size());
        CHECK(after.own().fit.preload_mm == 0.9);
    }
}

TEST_CASE("a limit is the depth from which a cut is refused", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        for (const GrindFace face : designs::kGrindFaces) {
            const GrindLimit limit = grind_limits(design, face, std::nullopt).front();
            CAPTURE(name, static_cast<int>(limit.end), limit.depth_mm);
            CHECK_NOTHROW(ground(design, face, 0.9999 * limit.depth_mm));
            CHECK_THROWS_AS(ground(design, face, 1.0001 * limit.depth_mm), InvalidInput);
        }
    }
}

TEST_CASE("a cut that cannot be made is told", "[shop][abuse]") {
    const double nan = std::nan(""), inf = std::numeric_limits<double>::infinity();
    const auto heron = designs::heron();
    const auto said = [&](Cut cut) { return refusal(heron, cut); };
    CHECK(said({GrindFace::back, -0.1, {}}) == "back: must be at least 0 mm, got -0.1 mm");
    CHECK(said({GrindFace::belly, nan, {}}) == "belly: must be a finite number, got nan mm");
    CHECK(said({GrindFace::pad, inf, {}}) == "pad: must be a finite number, got inf mm");
    CHECK(said({GrindFace::back, 3.0, {}}) ==
          "back: must be less than 0.6264706 mm, where the pin hole at -34 mm opens, got 3 mm\n"
          "back: must be less than 0.85 mm, where the pin hole at 0 mm opens, got 3 mm\n"
          "back: must be less than 2.35 mm, where next to no steel is left, got 3 mm");
    CHECK(said({GrindFace::pad, 1.0, {}}) ==
          "pad: must be at most 0.9 mm, where the preload is used up, got 1 mm");
    CHECK(said({GrindFace::back, 0.1, GrindRegion{20.0, 5.0}}) ==
          "region: must end ahead of its start, got 20 mm to 5 mm");
    CHECK(said({GrindFace::back, 0.1, GrindRegion{0.0, 40.0}}) ==
          "region: must lie on the spring, from -38 mm to 36.5 mm, got 0 mm to 40 mm");
    CHECK(said({GrindFace::back, 0.1, GrindRegion{nan, 40.0}}) ==
          "region: must be a finite number, got nan mm");
    CHECK(said({GrindFace::belly, 0.1, GrindRegion{0.0, 30.0}}) ==
          "region: the belly ends where the pad begins, at 27 mm; the pad is a face of its own, "
          "got 0 mm to 30 mm");
    CHECK(said({GrindFace::pad, 0.1, GrindRegion{27.0, 30.0}}) ==
          "region: the pad is ground whole, from 27 mm to 36.5 mm, got 27 mm to 30 mm");
    Design broken = heron;
    broken.spring.width_mm = 0.0;
    CHECK(refusal(broken, {GrindFace::back, 0.1, {}}) ==
          "spring.width: must be greater than 0 mm, got 0 mm");
}

TEST_CASE("a region a hair off a station means the station", "[shop][property]") {
    const Design heron = designs::heron();
    const Design after =
        grind(heron, {GrindFace::belly, 0.2, GrindRegion{7.0 + 1e-9, 27.0 + 1e-9}});
    REQUIRE(after.spring.thickness.size() == heron.spring.thickness.size() + 3);
    CHECK(after.spring.thickness[4].x_mm == 7.0);
    CHECK(after.spring.thickness[7].x_mm == 27.0);
}

TEST_CASE("the back is ground from end to end, a strip to an even thinner one",
          "[shop][closed-form]") {
    Design thick = designs::heron(), thin = designs::heron();
    thick.spring.holes.clear();
    thin.spring.holes.clear();
    thick.spring.thickness = {{0.0, 3.0}};
    thin.spring.thickness = {{0.0, 2.6}};
    const Check after = check(ground(thick, GrindFace::back, 0.4)), drawn = check(thin);
    CHECK_THAT(after.stiffness_n_per_mm, WithinRel(drawn.stiffness_n_per_mm, 1e-12));
    CHECK_THAT(after.travel.peak_stress_mpa, WithinRel(drawn.travel.peak_stress_mpa, 1e-12));
    // Ahead of the middle pin alone the root keeps its thickness, and turns less.
    const Design ahead = grind(thick, {GrindFace::back, 0.4, GrindRegion{0.0, 36.5}});
    CHECK(check(ahead).stiffness_n_per_mm > 1.01 * after.stiffness_n_per_mm);
}

TEST_CASE("the whole back reaches from the rearmost station to the front", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const GrindRegion whole = whole_face(design, GrindFace::back);
        CHECK(whole.from_mm <= design.spring.thickness.front().x_mm);
        CHECK(whole.to_mm >= design.own().pad.end_mm);
        const Design after = ground(design, GrindFace::back, 0.1);
        for (double x = whole.from_mm + 0.05; x < whole.to_mm; x += 0.37) {
            CHECK_THAT(thickness_at(after, x), WithinAbs(thickness_at(design, x) - 0.1, 1e-13));
        }
    }
}

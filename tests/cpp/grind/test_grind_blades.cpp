#include <cmath>

#include "backspring/check/case_solutions.hpp"
#include "backspring/check/check.hpp"
#include "backspring/grind/grind_depth.hpp"
#include "backspring/grind/grind_flush.hpp"
#include "backspring/grind/grind_ways.hpp"
#include "catch.hpp"
#include "several_blades.hpp"

using namespace backspring;

namespace {

const Design kPinned = designs::bunting(SupportKind::two_pins);

std::string refusal_of(const Design& design, const Cut& cut) {
    try {
        (void)grind(design, cut);
    } catch (const InvalidInput& error) {
        return error.what();
    }
    return "";
}

double pull_n(const Design& design) {
    CaseSolutions solved(design);
    return peak_pull_n(solved).value();
}

}  // namespace

TEST_CASE("the whole back reaches to the far end, past the pad there", "[shop][blades]") {
    const GrindRegion pinned = whole_face(kPinned, GrindFace::back);
    CHECK(pinned.from_mm == -18.0 - 33.0);
    CHECK(pinned.to_mm == 36.5);
    Design even = designs::bunting(SupportKind::clamped);
    even.spring.thickness = {{0.0, 3.0}};
    CHECK(whole_face(even, GrindFace::back).from_mm == -33.0);
    const Design ground = grind(even, {GrindFace::back, 0.2, {}});
    CHECK_THAT(thickness_mm(ground.spring.thickness, -32.9), WithinRel(2.8, 1e-12));
    CHECK(grind(even, {GrindFace::back, 0.2, GrindRegion{-33.0, 0.0}}).spring.thickness.size() > 1);
}

TEST_CASE("steel off the whole back is the same from either end", "[shop][blades][property]") {
    for (const Design& design : {kPinned, designs::bunting(SupportKind::clamped)}) {
        const Design here = seen_from(grind(design, {GrindFace::back, 0.15, {}}), 1);
        const Design there = grind(seen_from(design, 1), {GrindFace::back, 0.15, {}});
        for (double x = -54.0; x <= 33.0; x += 0.37) {
            CHECK_THAT(thickness_mm(here.spring.thickness, x),
                       WithinAbs(thickness_mm(there.spring.thickness, x), 1e-12));
        }
        const Check a = check(here), b = check(there);
        CHECK_THAT(a.travel.peak_stress_mpa, WithinRel(b.travel.peak_stress_mpa, 1e-9));
    }
}

TEST_CASE("grinding the far overhang moves the near blade's pull", "[shop][blades][property]") {
    for (const Design& design : {kPinned, designs::bunting(SupportKind::clamped)}) {
        const bool pinned = design.spring.support.kind == SupportKind::two_pins;
        const double pin = design.spring.support.rear_pin_mm;
        const GrindRegion far{-pin - 20.0, -pin};
        const auto rows = grind_table(design, {GrindFace::back, 0.02, far}, 0.01);
        const double first = *rows[1].peak_pull_n - *rows[0].peak_pull_n;
        const double second = *rows[2].peak_pull_n - *rows[1].peak_pull_n;
        // Two pins: the moment at the far one lifts this end too, and there is less of it. One pin:
        // the two ends hold each other, and the whole is softer.
        CHECK((first > 0.0) == pinned);
        CHECK_THAT(second, WithinRel(first, 0.02));
        CHECK(rows[2].preload_mm == rows[0].preload_mm);
    }
}

TEST_CASE("the belly ends at the pad of the other end", "[shop][blades]") {
    CHECK(whole_face(kPinned, GrindFace::belly).to_mm == 27.0);
    CHECK(refusal_of(kPinned, {GrindFace::belly, 0.1, GrindRegion{-41.0, 27.0}}).empty());
    CHECK_THAT(refusal_of(kPinned, {GrindFace::belly, 0.1, GrindRegion{-42.0, 27.0}}),
               ContainsSubstring("the pad at the other end begins, at -41 mm"));
}

TEST_CASE("the pad of two blades on one pin is ground for both", "[shop][blades]") {
    Design design = designs::whinchat();
    design.blades[1].fit.preload_mm = 0.7;
    const Design ground = grind(design, {GrindFace::pad, 0.2, {}});
    CHECK_THAT(ground.blades[0].fit.preload_mm, WithinAbs(0.7, 1e-14));
    CHECK_THAT(ground.blades[1].fit.preload_mm, WithinAbs(0.5, 1e-14));
    CHECK(grind_limits(design, GrindFace::pad, {}).front().depth_mm <= 0.7);
    const Design apart = grind(kPinned, {GrindFace::pad, 0.2, {}});
    CHECK(apart.blades[1].fit.preload_mm == kPinned.blades[1].fit.preload_mm);
}

TEST_CASE("the depth for a pull gives the largest pull of all cases", "[shop][blades]") {
    const double wanted = 0.93 * pull_n(kPinned);
    for (const GrindWay& way : ways_to_pull(kPinned, wanted)) {
        CAPTURE(static_cast<int>(way.face), way.region.from_mm);
        if (way.after) CHECK_THAT(*way.after->peak_pull_n, WithinRel(wanted, 1e-6));
    }
    const double depth = depth_for_pull(kPinned, GrindFace::back, {}, wanted);
    CHECK_THAT(pull_n(grind(kPinned, {GrindFace::back, depth, {}})), WithinRel(wanted, 1e-6));
    CHECK_THAT(preload_for_pull(kPinned, wanted).value().preload_mm,
               WithinAbs(kPinned.own().fit.preload_mm, 0.4));
}

TEST_CASE("ground flush with every blade open, only the own end is ground", "[shop][blades]") {
    const Flush flush = grind_flush(kPinned, {}, 0.02);
    REQUIRE_FALSE(flush.passes.empty());
    CHECK(flush.left_proud_mm <= 1e-3);
    CHECK(flush.design.blades[1].stands == Stand::closed);
    CHECK(thickness_mm(flush.design.spring.thickness, -30.0) ==
          thickness_mm(kPinned.spring.thickness, -30.0));
}

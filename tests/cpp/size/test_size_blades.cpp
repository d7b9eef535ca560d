#include "backspring/check/case_solutions.hpp"
#include "backspring/check/check.hpp"
#include "backspring/size/size.hpp"
#include "backspring/size/taper.hpp"
#include "catch.hpp"
#include "measures.hpp"
#include "several_blades.hpp"

using namespace backspring;

namespace {

const Design kTwoEnds = designs::bunting(SupportKind::two_pins);

double pull_n(const Design& design) {
    CaseSolutions solved(design);
    return peak_pull_n(solved).value();
}

}  // namespace

TEST_CASE("a size gives the pull of the hardest case", "[size][blades]") {
    const double wanted = 0.95 * pull_n(kTwoEnds);
    for (const char* key : {"fit.preload", "spring.thickness", "blades.pen.fit.preload"}) {
        const SizeResult sized =
            size(kTwoEnds, {.pull_n = wanted, .yield_margin = {}}, {measure(key)});
        CAPTURE(key);
        if (std::string(key) != "blades.pen.fit.preload") REQUIRE_FALSE(sized.answers.empty());
        for (const SizeAnswer& answer : sized.answers) {
            CHECK_THAT(pull_n(answer.design), WithinRel(wanted, 1e-8));
        }
    }
}

TEST_CASE("another blade's preload is a measure, its pivot is none", "[size][blades]") {
    const SizeDimension pen = measure("blades.pen.fit.preload");
    CHECK(size_of(kTwoEnds, pen) == 0.6);
    CHECK(with_size(kTwoEnds, pen, 0.5).blades[1].fit.preload_mm == 0.5);
    CHECK_THAT(size_bounds(kTwoEnds, pen).high_mm, WithinRel(1.5, 1e-12));
    for (const char* key : {"blades.pen.tang.pivot", "blades.file.fit.preload"}) {
        CHECK_THROWS_WITH(require_dimensions(kTwoEnds, {measure(key)}),
                          ContainsSubstring("cannot be sized"));
    }
    const Design moved = with_size(designs::whinchat(), measure("spring.length"), 33.0);
    for (const Blade& blade : moved.blades) {
        CHECK(blade.tang.pivot_mm == 33.0);
        CHECK(blade.pad.end_mm == 37.5);
    }
    CHECK(faults(moved).empty());
}

TEST_CASE("a taper carries the stress of both ends evenly", "[size][blades]") {
    for (const SupportKind kind : {SupportKind::two_pins, SupportKind::clamped}) {
        const Design design = designs::bunting(kind);
        const double wanted = pull_n(design);
        const Taper taper = propose_taper(design, wanted, 1.2);
        CHECK_THAT(pull_n(taper.design), WithinRel(wanted, 1e-6));
        double worst = 0.0;
        for (const Check& each : check_blades(taper.design)) {
            for (const Beside& row : each.beside) {
                worst = std::max(worst, row.travel.peak_stress_mpa);
            }
        }
        // The profile is straight between its stations: a little above the even stress.
        CHECK(worst < 1.03 * taper.even_stress_mpa);
        CHECK(worst > 0.9 * taper.even_stress_mpa);
        CHECK(taper.design.spring.thickness.front().x_mm == design.spring.thickness.front().x_mm);
    }
}

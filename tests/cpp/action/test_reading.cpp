#include <cmath>

#include "backspring/action/reading.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

Readings loaded(const Design& design) {
    const Joint joint =
        make_joint(design.spring, design.own().pad, design.own().tang, design.own().fit);
    return readings(joint, find_rests(joint, design.own().tang.half_stop_mm.has_value()));
}

Readings unloaded(const Design& design) {
    const Joint joint = make_unloaded_joint(design.own().pad, design.own().tang, design.own().fit);
    return readings(joint, find_rests(joint, design.own().tang.half_stop_mm.has_value()));
}

/// Reading of a rigid spring that lies on a flat at a distance from the pivot.
///
/// The resting line keeps that distance d: (d_o + s a)^2 = d^2 (1 + s^2), s its slope.
double rigid_reading_mm(const Design& design, double distance_mm) {
    const double a = design.own().tang.pivot_mm, open = design.own().tang.open_mm, d = distance_mm;
    const double square = a * a - d * d;
    const double slope =
        (-open * a + std::sqrt(open * open * a * a + square * (d * d - open * open))) / square;
    return slope * design.own().fit.dial_mm;
}

}  // namespace

TEST_CASE("with the rear pin out the dial shows the tang's own faces", "[action][closed form]") {
    for (const double above : {-0.05, 0.0, 0.02, 0.12, 0.4}) {
        CAPTURE(above);
        Design design = designs::heron();
        design.own().tang.half_stop_mm = 4.5 + above;
        design.own().tang.closed_mm = 4.5 + 0.5 * above;
        const Readings shown = unloaded(design);
        REQUIRE(shown.half_stop_mm);
        REQUIRE(shown.closed_mm);
        CHECK_THAT(*shown.half_stop_mm, WithinAbs(rigid_reading_mm(design, 4.5 + above), 1e-10));
        CHECK_THAT(*shown.closed_mm, WithinAbs(rigid_reading_mm(design, 4.5 + 0.5 * above), 1e-10));
        // To first order the difference of the faces, as far out as the dial is.
        CHECK_THAT(*shown.half_stop_mm,
                   WithinAbs(above * 33.5 / 32.0, 0.01 * std::abs(above) + 1e-9));
    }
}

TEST_CASE("unloaded readings do not know the spring", "[action][property]") {
    Design design = designs::heron();
    const double reading = *unloaded(design).closed_mm;
    design.own().fit.preload_mm = 0.3;
    design.spring.width_mm = 4.0;
    design.spring.elastic.youngs_modulus_mpa = 1e5;
    CHECK(*unloaded(design).closed_mm == reading);
}

TEST_CASE("readings of the worked example agree with a slow solution", "[action][oracle]") {
    // Stated error of that solution: 0.0003 mm.
    const Readings with = loaded(designs::heron()), without = unloaded(designs::heron());
    CHECK_THAT(*with.half_stop_mm, WithinAbs(0.0869, 3e-4));
    CHECK_THAT(*with.closed_mm, WithinAbs(0.0655, 3e-4));
    CHECK_THAT(*without.half_stop_mm, WithinAbs(0.1257, 3e-4));
    CHECK_THAT(*without.closed_mm, WithinAbs(0.1047, 3e-4));
}

TEST_CASE("pins in, half-stop and closed read lower than with the rear pin out",
          "[action][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        if (design.own().tang.kick) continue;  // the kick lifts the closed reading
        const Readings with = loaded(design), without = unloaded(design);
        CHECK(*with.closed_mm < *without.closed_mm);
        if (design.own().tang.half_stop_mm) CHECK(*with.half_stop_mm < *without.half_stop_mm);
    }
}

TEST_CASE("there is no reading where the blade does not rest", "[action][property]") {
    CHECK_FALSE(loaded(designs::wren()).half_stop_mm);
    CHECK_FALSE(unloaded(designs::wren()).half_stop_mm);
    CHECK(loaded(designs::wren()).closed_mm);
}

TEST_CASE("a higher face reads higher by its own height", "[action][property]") {
    Design design = designs::heron();
    const double before = *loaded(design).closed_mm;
    design.own().tang.closed_mm += 0.01;
    // As far out as the dial is, to within what the spring bends: a few percent.
    CHECK_THAT(*loaded(design).closed_mm - before, WithinRel(0.01 * 33.5 / 32.0, 0.05));
}

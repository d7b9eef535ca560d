#include "backspring/fit/allowance.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("the allowance's tang reads the target when loaded", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        for (const double target : {0.0, 0.0254, 0.1}) {
            INFO(name << " " << target);
            const Allowance left = allowance(design, target);
            Design fitted = design;
            fitted.own().tang = left.tang;
            const FitReadings read = fit_readings(fitted);
            CHECK_THAT(*read.loaded.closed_mm, WithinAbs(target, 1e-7));
            CHECK_THAT(*read.unloaded.closed_mm, WithinAbs(left.closed_mm, 1e-12));
            REQUIRE(left.half_stop_mm.has_value() == design.own().tang.half_stop_mm.has_value());
            if (!left.half_stop_mm) continue;
            CHECK_THAT(*read.loaded.half_stop_mm, WithinAbs(target, 1e-7));
            CHECK_THAT(*read.unloaded.half_stop_mm, WithinAbs(*left.half_stop_mm, 1e-12));
        }
    }
}

TEST_CASE("a slight preload loses its share of the allowance", "[shop][closed form]") {
    // Small deflections: what is lost under load goes with the preload, but for the turn of the
    // blade, which counts in the second order (about 1 % at a slope of 0.02).
    Design design = designs::heron();
    const double whole = allowance(design, 0.0).closed_mm;
    design.own().fit.preload_mm *= 0.1;
    CHECK_THAT(allowance(design, 0.0).closed_mm, WithinRel(0.1 * whole, 0.03));
}

TEST_CASE("more preload asks for more allowance", "[shop][property]") {
    double last = 0.0;
    for (const double preload : {0.3, 0.6, 0.9, 1.2}) {
        Design design = designs::heron();
        design.own().fit.preload_mm = preload;
        const double left = allowance(design).closed_mm;
        CHECK(left > last);
        last = left;
    }
}

TEST_CASE("an even change of thickness hardly moves the allowance", "[shop][closed form]") {
    // A clamped strip held out by a given distance has the same shape whatever its thickness; only
    // shear, which goes with (t/L)^2, tells: under 1 % here.
    Design design = designs::dunlin();
    const double whole = allowance(design, 0.0).closed_mm;
    design.spring.thickness.front().thickness_mm *= 0.8;
    CHECK_THAT(allowance(design, 0.0).closed_mm, WithinRel(whole, 0.01));
}

TEST_CASE("grinding the back leaves the unloaded readings", "[shop][property]") {
    const Design design = designs::heron();
    const BackGrindReadings ground = readings_after_back_grind(design, 0.1);
    CHECK_THAT(*ground.after.unloaded.half_stop_mm,
               WithinAbs(*ground.before.unloaded.half_stop_mm, 1e-12));
    CHECK(*ground.after.loaded.half_stop_mm != *ground.before.loaded.half_stop_mm);
    const BackGrindReadings none = readings_after_back_grind(design, 0.0);
    CHECK(*none.after.loaded.closed_mm == *none.before.loaded.closed_mm);
    CHECK(none.allowance_after.closed_mm == none.allowance_before.closed_mm);
}

TEST_CASE("a target out of reach is told", "[shop][abuse]") {
    CHECK_THROWS_AS(allowance(designs::heron(), 2.0), InvalidInput);
    CHECK_THROWS_AS(allowance(designs::heron(), std::nan("")), InvalidInput);
    CHECK_THROWS_AS(readings_after_back_grind(designs::heron(), -0.1), InvalidInput);
    CHECK_THROWS_AS(readings_after_back_grind(designs::heron(), 2.0), InvalidInput);
}

#include "backspring/check/check.hpp"
#include "backspring/fit/fit_model.hpp"
#include "backspring/tang/tang.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("readings are those of a check", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        INFO(name);
        const Check result = check(design);
        const FitReadings read = fit_readings(design);
        for (const Position& each : result.positions) {
            if (each.name == "open") continue;
            const bool half = each.name == "half_stop";
            CHECK((half ? read.loaded.half_stop_mm : read.loaded.closed_mm) ==
                  each.reading_loaded_mm);
            CHECK((half ? read.unloaded.half_stop_mm : read.unloaded.closed_mm) ==
                  each.reading_unloaded_mm);
        }
    }
}

TEST_CASE("a rigid spring reads its face's height by similar triangles", "[shop][closed form]") {
    // The spring turns on the middle pin: (face - open) x dial / pivot. The blade turns half a
    // degree to follow, which counts in the second order.
    const Design design = designs::heron();
    const FitReadings read = fit_readings(design);
    CHECK_THAT(*read.unloaded.half_stop_mm, WithinRel(0.12 * 33.5 / 32.0, 1e-3));
    CHECK_THAT(*read.unloaded.closed_mm, WithinRel(0.10 * 33.5 / 32.0, 1e-3));
}

TEST_CASE("what comes off comes off the face it is said of", "[shop][closed form]") {
    const Design design = designs::plover();
    const FaceDepths off{.open_mm = 0.01, .half_stop_mm = 0.02, .closed_mm = 0.03, .kick_mm = 0.05};
    const Design ground = take_off(design, off);
    CHECK_THAT(ground.own().tang.open_mm, WithinAbs(4.49, 1e-12));
    CHECK_THAT(ground.own().fit.preload_mm, WithinAbs(0.89, 1e-12));
    CHECK_THAT(*ground.own().tang.half_stop_mm, WithinAbs(4.60, 1e-12));
    CHECK_THAT(ground.own().tang.closed_mm, WithinAbs(4.57, 1e-12));
    CHECK_THAT(ground.own().tang.kick->height_mm, WithinAbs(0.18, 1e-12));
    for (const TangFace face :
         {TangFace::open, TangFace::half_stop, TangFace::closed, TangFace::kick}) {
        CHECK(off.of(face) > 0.0);
        CHECK_FALSE(name_of(face).empty());
    }
}

TEST_CASE("the closed face alone leaves the nose where it is", "[shop][closed form]") {
    const Design design = designs::plover();
    const Design ground = take_off(design, {.closed_mm = 0.05});
    const auto nose = [](const Design& d) {
        return d.own().tang.closed_mm + d.own().tang.kick->height_mm;
    };
    CHECK_THAT(nose(ground), WithinAbs(nose(design), 1e-12));
}

TEST_CASE("a kick ground down to the face is gone", "[shop][property]") {
    const Design ground = take_off(designs::plover(), {.kick_mm = 0.2});
    CHECK_FALSE(ground.own().tang.kick);
    CHECK(faults(ground).empty());
}

TEST_CASE("a round end stays where its radius is given", "[shop][property]") {
    Design design = designs::wren();
    design.own().tang.round_end_mm = 6.0;
    const Design ground = take_off(design, {.open_mm = 0.1, .closed_mm = 0.1});
    CHECK(rear_reach_mm(ground.own().tang) == 6.0);
    CHECK(faults(ground).empty());
}

TEST_CASE("a closed face far proud of the drawing takes a round end along", "[fit][closed form]") {
    Design design = designs::wren();
    design.own().tang.round_end_mm.reset();
    const double drawn = design.own().tang.closed_mm;
    const double radius = round_end_radius_mm(design.own().tang), beyond = radius - drawn;
    const auto end_mm = [&](double proud_mm) {
        return *take_off(design, {.closed_mm = -proud_mm}).own().tang.round_end_mm;
    };
    // Half as far beyond the face as drawn is the least that is left.
    CHECK_THAT(end_mm(0.4 * beyond), WithinAbs(radius, 1e-12));
    CHECK_THAT(end_mm(beyond), WithinAbs(drawn + 1.5 * beyond, 1e-12));
}

TEST_CASE("play lifts the unloaded readings alone", "[shop][closed form]") {
    const Design design = designs::heron();
    const FitReadings tight = fit_readings(design);
    const FitReadings loose = fit_readings(design, {.pivot_play_mm = 0.04});
    CHECK(*loose.loaded.closed_mm == *tight.loaded.closed_mm);
    CHECK_THAT(*loose.unloaded.closed_mm - *tight.unloaded.closed_mm,
               WithinAbs(0.02 * 33.5 / 32.0, 1e-12));
}

TEST_CASE("a tilted pad moves the datum", "[shop][property]") {
    // Gaping at the rear, the pad rides on the front edge: with the rear pin out the spring stands
    // prouder at open, by the tilt over the way from the pivot's station to that edge.
    const Design design = designs::heron();
    const double straight = *fit_readings(design).unloaded.half_stop_mm;
    for (const double tilt : {-0.002, 0.002}) {
        const double tilted = *fit_readings(design, {.pad_tilt_rad = tilt}).unloaded.half_stop_mm;
        CHECK(std::abs(tilted - straight) < std::abs(tilt) * 5.0 * 1.2);
        CHECK(std::abs(tilted - straight) > std::abs(tilt) * 1.0);
    }
}

TEST_CASE("a leaning pad bears at the pivot as an even one, whatever the dial", "[fit][property]") {
    Design design = designs::heron();
    const auto rest_deg = [&](double dial_mm) {
        design.own().fit.dial_mm = dial_mm;
        return *fit_readings(design, {.pad_tilt_rad = 0.002}).closed_angle_deg;
    };
    CHECK_THAT(rest_deg(28.0), WithinAbs(rest_deg(33.5), 1e-9));
}

TEST_CASE("root rotation added is root rotation", "[shop][closed form]") {
    // A root stiffness of 1/R is a clamp with R added.
    const Design clamped = designs::dunlin();
    Design elastic = clamped;
    elastic.spring.support.kind = SupportKind::root_stiffness;
    elastic.spring.support.root_stiffness_nmm_per_rad = 2.0e5;
    const FitReadings added = fit_readings(clamped, {.extra_root_rad_per_nmm = 5.0e-6});
    CHECK_THAT(*added.loaded.closed_mm, WithinAbs(*fit_readings(elastic).loaded.closed_mm, 1e-12));
}

TEST_CASE("the tip is where the blade points", "[shop][closed form]") {
    Design design = designs::heron();
    CHECK_FALSE(tip_height_mm(design, 1.0));
    design.own().blade.length_mm = 80.0;
    CHECK_THAT(*tip_height_mm(design, 30.0), WithinRel(0.5 * (80.0 - 4.62), 1e-12));
}

TEST_CASE("a bad design is refused", "[shop][abuse]") {
    Design design = designs::heron();
    design.spring.width_mm = -1.0;
    CHECK_THROWS_AS(fit_readings(design), InvalidInput);
}

TEST_CASE("what the model leaves out moves loaded readings alone, both alike", "[fit][property]") {
    const Design design = designs::heron();
    const FitReadings as_drawn = fit_readings(design);
    FitUnknowns stop;
    stop.loaded_offset_mm = -0.02;
    const FitReadings off = fit_readings(design, stop);
    CHECK_THAT(*off.loaded.half_stop_mm, WithinAbs(*as_drawn.loaded.half_stop_mm - 0.02, 1e-12));
    CHECK_THAT(*off.loaded.closed_mm, WithinAbs(*as_drawn.loaded.closed_mm - 0.02, 1e-12));
    CHECK(off.unloaded.closed_mm == as_drawn.unloaded.closed_mm);
    CHECK(off.closed_angle_deg == as_drawn.closed_angle_deg);
}

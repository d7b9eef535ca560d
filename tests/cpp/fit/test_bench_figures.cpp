#include "backspring/check/check.hpp"
#include "backspring/fit/bench_figures.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("a knife as it was drawn has the pulls and the stress of a check", "[fit][property]") {
    for (const auto& [name, design] : designs::all()) {
        INFO(name);
        const Check result = check(design);
        const BenchFigures bench = bench_figures(design);
        CHECK_THAT(bench.travel_peak_stress_mpa, WithinRel(result.travel.peak_stress_mpa, 1e-6));
        if (result.strokes.empty() || !design.own().blade.nail_nick_mm) continue;
        double opening = 0.0, closing = 0.0;
        for (const StrokeReport& each : result.strokes) {
            opening = std::max(opening, *each.peak_pull_n);
            closing = std::max(closing, *each.closing_peak_pull_n);
        }
        // Where two strokes are equally hard their kink is rounded by 0.1 %.
        CHECK_THAT(*bench.peak_pull_n, WithinRel(opening, 1.01e-3));
        CHECK_THAT(*bench.closing_peak_pull_n, WithinRel(closing, 1.01e-3));
        CHECK_THAT(*bench.start_pull_n, WithinRel(*result.strokes.front().start_pull_n, 1e-6));
    }
}

TEST_CASE("a weight moves the dial by the flexibility between them", "[fit][closed form]") {
    const Design design = designs::heron();
    const double extra = 2e-6, weight = 19.6, station = 30.0;
    const FitUnknowns bench{
        .pad_tilt_rad = 0.0, .pivot_play_mm = 0.0, .extra_root_rad_per_nmm = extra};
    const Flexibility held = make_flexibility(design.spring);
    const double per_n = deflection_per_force(held, design.own().fit.dial_mm, station) +
                         extra * design.own().fit.dial_mm * station;
    CHECK_THAT(hung_movement_mm(design, weight, station, bench), WithinRel(weight * per_n, 1e-12));
}

TEST_CASE("a root that gives more is pulled more easily", "[fit][property]") {
    const Design design = designs::heron();
    const FitUnknowns loose{
        .pad_tilt_rad = 0.0, .pivot_play_mm = 0.0, .extra_root_rad_per_nmm = 1e-6};
    CHECK(*bench_figures(design, loose).peak_pull_n < *bench_figures(design).peak_pull_n);
}

TEST_CASE("a feeler finds what a check finds at the least gap", "[fit][property]") {
    Design design = designs::heron();
    design.own().blade.edge = {{9.0, -4.0}, {60.0, -4.0}, {76.0, 1.0}};
    design.own().blade.well_mm = 3.0;
    const ClosedBlade closed = check(design).closed_blade;
    REQUIRE(closed.edge_gap_at_mm);
    const ClosedFigures found = closed_figures(design, *closed.edge_gap_at_mm);
    CHECK_THAT(*found.tip_mm, WithinAbs(*closed.tip_mm, 1e-9));
    CHECK_THAT(*found.gap_mm, WithinAbs(*closed.edge_gap_mm, 1e-9));
    for (const double station : {-30.0, -10.0, 0.0, 10.0, 20.0}) {
        CHECK(*closed_figures(design, station).gap_mm >= *closed.edge_gap_mm - 1e-9);
    }
    CHECK_FALSE(closed_figures(design, -400.0).gap_mm);
    CHECK_FALSE(closed_figures(design, 400.0).gap_mm);
    CHECK_FALSE(closed_figures(designs::heron(), 0.0).tip_mm);
}

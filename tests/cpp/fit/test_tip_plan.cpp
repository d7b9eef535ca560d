#include <algorithm>
#include <cmath>
#include <random>

#include "backspring/core/error.hpp"
#include "backspring/fit/fit_plan.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

constexpr double kTargetMm = 0.0254;

Design kicked() {
    Design design = designs::plover();
    design.own().blade.length_mm = 90.0;
    return design;
}

Measured loaded(const Design& design, double half_stop, double closed) {
    Measured read{.half_stop_mm = std::nullopt, .closed_mm = closed};
    if (design.own().tang.half_stop_mm) read.half_stop_mm = half_stop;
    return read;
}

bool notes(const FitPlan& plan, NoticeCode code) {
    return std::any_of(plan.notices.begin(), plan.notices.end(),
                       [&](const Notice& each) { return each.code == code; });
}

double total(const FaceDepths& d) { return d.open_mm + d.half_stop_mm + d.closed_mm + d.kick_mm; }

/// What every plan must keep, whatever is asked of the tip.
void check_bench_rules(const FitPlan& plan) {
    for (const FitStep& step : plan.steps) {
        CHECK(step.remove_mm > 0.0);
        CHECK(step.closed_loaded_mm >= kTargetMm);
        CHECK(step.half_stop_loaded_mm.value_or(1.0) >= kTargetMm);
    }
    for (const TangFace face :
         {TangFace::open, TangFace::half_stop, TangFace::closed, TangFace::kick}) {
        CHECK(plan.removed.of(face) >= 0.0);
    }
}

}  // namespace

TEST_CASE("a plan for a kicked tang keeps the tip where it is", "[tip plan][property]") {
    const Design design = kicked();
    const FitPlan plan = fit_plan(design, loaded(design, 0.3, 0.25));
    check_bench_rules(plan);
    CHECK(std::abs(*plan.tip_mm) < 0.02);
    CHECK(plan.removed.closed_mm > 0.05);
    CHECK(plan.removed.kick_mm > 0.05);
    CHECK_FALSE(notes(plan, NoticeCode::moves_tip));
    CHECK_THAT(plan.steps.back().closed_loaded_mm, WithinAbs(kTargetMm + 0.001, 1e-3));
}

TEST_CASE("tip and readings end as asked together", "[tip plan][property]") {
    const Design design = kicked();
    for (const double tip : {-0.8, -0.3, 0.0, 0.4, 1.2}) {
        INFO(tip);
        PlanRules rules;
        rules.tip_mm = tip;
        const FitPlan plan = fit_plan(design, loaded(design, 0.3, 0.25), rules);
        check_bench_rules(plan);
        CHECK_THAT(*plan.tip_mm, WithinAbs(tip, 0.02));
        CHECK(notes(plan, NoticeCode::moves_tip) == (std::abs(tip) > 0.5));
        CHECK_FALSE(plan.level_removed);
        CHECK_FALSE(plan.tip_runs_out);
    }
}

TEST_CASE("without a tip's place the blade's angle is kept", "[tip plan][property]") {
    const Design design = designs::plover();
    const FitPlan plan = fit_plan(design, loaded(design, 0.3, 0.25));
    CHECK_FALSE(plan.tip_mm);
    CHECK_THAT(*fit_readings(plan.done).closed_angle_deg,
               WithinAbs(*fit_readings(plan.now).closed_angle_deg, 0.01));
}

TEST_CASE("a plan that lifts the tip says so and offers the level one", "[tip plan][property]") {
    const Design design = kicked();
    PlanRules rules;
    rules.closed_by = ClosedGrind::closed;
    const Measured read = loaded(design, 0.3, 0.25);
    const FitPlan plan = fit_plan(design, read, rules);
    REQUIRE(*plan.tip_mm > 0.5);
    REQUIRE(notes(plan, NoticeCode::moves_tip));
    REQUIRE(plan.level_removed);
    const FaceDepths level = fit_plan(design, read).removed;
    CHECK_THAT(plan.level_removed->closed_mm, WithinAbs(level.closed_mm, 2e-3));
    CHECK_THAT(plan.level_removed->kick_mm, WithinAbs(level.kick_mm, 2e-3));
    rules.tip_allowance_mm = 10.0;
    CHECK_FALSE(notes(fit_plan(design, read, rules), NoticeCode::moves_tip));
}

TEST_CASE("a tip out of reach comes as near as it can, readings met", "[tip plan][property]") {
    const Design design = kicked();
    const Measured read = loaded(design, 0.1, 0.06);
    // The farther ones no tang has at all.
    for (const double tip : {-20.0, -3.0, 3.0, 20.0}) {
        INFO(tip);
        PlanRules rules;
        rules.tip_mm = tip;
        const FitPlan plan = fit_plan(design, read, rules);
        check_bench_rules(plan);
        CHECK(notes(plan, NoticeCode::tip_runs_out));
        CHECK(plan.tip_runs_out == (tip < 0.0 ? TangFace::closed : TangFace::kick));
        CHECK((tip < 0.0 ? plan.removed.closed_mm : plan.removed.kick_mm) == 0.0);
        CHECK(*plan.tip_mm * tip > 0.0);
        CHECK_THAT(plan.steps.back().closed_loaded_mm, WithinAbs(kTargetMm + 0.001, 1e-3));
    }
}

TEST_CASE("the open face gives room for the tip where it may", "[tip plan][property]") {
    const Design design = kicked();
    PlanRules rules;
    rules.tip_mm = -0.8;
    const Measured read = loaded(design, 0.06, 0.04);
    const FitPlan held = fit_plan(design, read, rules);
    CHECK(held.removed.open_mm == 0.0);
    CHECK(*held.tip_mm > -0.5);
    rules.material.open_mm = 0.2;
    const FitPlan lowered = fit_plan(design, read, rules);
    check_bench_rules(lowered);
    CHECK(lowered.removed.open_mm > 0.0);
    CHECK(lowered.removed.closed_mm < 1e-3);
    CHECK_THAT(*lowered.tip_mm, WithinAbs(-0.8, 0.03));
    rules.material.open_mm = 0.01;
    const FitPlan some = fit_plan(design, read, rules);
    CHECK_THAT(some.removed.open_mm, WithinAbs(0.01, 1e-9));
    CHECK(*some.tip_mm < *held.tip_mm);
    CHECK(*some.tip_mm > *lowered.tip_mm);
}

TEST_CASE("no grid of depths does with less", "[tip plan][oracle]") {
    // Every choice of depths on a grid that ends at or above the target, within a hair of it, and
    // has the tip within a tenth: none takes less than the plan, but for the width of the mesh.
    const Design design = kicked();
    const Measured read = loaded(design, 0.08, 0.07);
    for (const double tip : {0.0, -0.25, 0.2}) {
        INFO(tip);
        PlanRules rules;
        rules.tip_mm = tip;
        const FitPlan plan = fit_plan(design, read, rules);
        const double start = *tip_height_mm(plan.now, *fit_readings(plan.now).closed_angle_deg);
        const double mesh = 0.006;
        double least = 1e9;
        for (int h = 0; h < 14; ++h) {
            for (int c = 0; c < 16; ++c) {
                for (int k = 0; k < 16; ++k) {
                    const FaceDepths off{
                        .half_stop_mm = h * mesh, .closed_mm = c * mesh, .kick_mm = k * mesh};
                    const FitReadings end = fit_readings(take_off(plan.now, off));
                    if (!end.loaded.closed_mm || !end.loaded.half_stop_mm) continue;
                    const double low = std::min(*end.loaded.closed_mm, *end.loaded.half_stop_mm);
                    const double high = std::max(*end.loaded.closed_mm, *end.loaded.half_stop_mm);
                    const double moved = *tip_height_mm(plan.now, *end.closed_angle_deg) - start;
                    if (low < kTargetMm || high > kTargetMm + 0.008) continue;
                    if (std::abs(moved - tip) <= 0.1) least = std::min(least, total(off));
                }
            }
        }
        REQUIRE(least < 1.0);
        CHECK(total(plan.removed) <= least + 3.0 * mesh);
    }
}

TEST_CASE("drawn tangs, kicked and plain, are never ground low", "[tip plan][property]") {
    std::mt19937 rng(11);
    const auto draw = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(rng);
    };
    int reached = 0, planned = 0;
    for (int i = 0; i < 120; ++i) {
        Design design = i % 3 == 0 ? designs::heron() : kicked();
        if (i % 5 == 0) design.own().tang.half_stop_mm.reset();
        design.own().blade.length_mm = draw(60.0, 110.0);
        design.own().fit.preload_mm = draw(0.5, 1.0);
        if (design.own().tang.kick) {
            design.own().tang.kick->distance_mm = draw(5.0, 9.0);
            design.own().tang.kick->height_mm = draw(0.05, 0.4);
        }
        if (!faults(design).empty()) continue;
        PlanRules rules;
        if (i % 2 == 0) rules.tip_mm = draw(-1.0, 1.0);
        try {
            const FitPlan plan =
                fit_plan(design, loaded(design, draw(0.03, 0.5), draw(0.03, 0.4)), rules);
            INFO(i);
            check_bench_rules(plan);
            CHECK(plan.removed.open_mm == 0.0);
            ++planned;
            const double miss = std::abs(*plan.tip_mm - rules.tip_mm.value_or(0.0));
            if (design.own().tang.kick && miss > 0.03) {
                CHECK((plan.tip_runs_out || notes(plan, NoticeCode::tip_follows)));
            }
            if (design.own().tang.kick && miss <= 0.03) ++reached;
        } catch (const NoConvergence&) {
            // A drawn tang may have no such readings, or no steel left for them.
        }
    }
    CHECK(planned > 100);
    CHECK(reached > 40);
}

TEST_CASE("a wish for the tip needs a tip, and goes alone", "[tip plan][abuse]") {
    PlanRules rules;
    rules.tip_mm = 0.2;
    const Design unknown = designs::plover();
    CHECK_THROWS_AS(fit_plan(unknown, loaded(unknown, 0.1, 0.1), rules), InvalidInput);
    const Design design = kicked();
    const auto refused = [&](auto spoil) {
        PlanRules bad = rules;
        spoil(bad);
        CHECK_THROWS_AS(fit_plan(design, loaded(design, 0.1, 0.1), bad), InvalidInput);
    };
    refused([](PlanRules& r) { r.closed_by = ClosedGrind::kick; });
    refused([](PlanRules& r) { r.tip_mm = 40.0; });
    refused([](PlanRules& r) { r.tip_mm = std::nan(""); });
    refused([](PlanRules& r) { r.tip_allowance_mm = -0.1; });
}

TEST_CASE("a round end stays as drawn when the closed face is ground", "[tip plan][closed form]") {
    const Design design = designs::wren();
    const double drawn = round_end_radius_mm(design.own().tang);
    CHECK(round_end_radius_mm(take_off(design, {.closed_mm = 0.1}).own().tang) == drawn);
    CHECK(round_end_radius_mm(take_off(design, {.open_mm = 0.1}).own().tang) == drawn);
    const FitPlan plan = fit_plan(design, Measured{.half_stop_mm = std::nullopt, .closed_mm = 0.3});
    REQUIRE(plan.removed.closed_mm > 0.1);
    CHECK(plan.done.own().tang.round_end_mm == plan.now.own().tang.round_end_mm);
    CHECK(round_end_radius_mm(plan.done.own().tang) == drawn);
}

#include <algorithm>

#include "backspring/fit/fit_plan.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

Measured measured(const Design& design, double half_stop, double closed, FitState state) {
    Measured read{.state = state, .half_stop_mm = std::nullopt, .closed_mm = closed};
    if (design.own().tang.half_stop_mm) read.half_stop_mm = half_stop;
    return read;
}

bool notes(const FitPlan& plan, std::string_view code) {
    return std::any_of(plan.notices.begin(), plan.notices.end(),
                       [&](const Notice& each) { return name_of(each.code) == code; });
}

double taken(const FitPlan& plan, TangFace face) {
    double sum = 0.0;
    for (const FitStep& step : plan.steps) sum += step.face == face ? step.remove_mm : 0.0;
    return sum;
}

}  // namespace

TEST_CASE("the knife it plans for reads as measured", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        for (const FitState state : {FitState::loaded, FitState::unloaded}) {
            INFO(name);
            const Design now = as_measured(design, measured(design, 0.3, 0.2, state));
            const FitReadings both = fit_readings(now);
            const Readings& read = state == FitState::loaded ? both.loaded : both.unloaded;
            CHECK_THAT(*read.closed_mm, WithinAbs(0.2, 1e-7));
            if (read.half_stop_mm) CHECK_THAT(*read.half_stop_mm, WithinAbs(0.3, 1e-7));
        }
    }
}

TEST_CASE("a plan ends a hair above the target and never goes below", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        INFO(name);
        const FitPlan plan = fit_plan(design, measured(design, 0.5, 0.3, FitState::loaded));
        REQUIRE_FALSE(plan.steps.empty());
        CHECK(plan.passes <= 6);
        for (const FitStep& step : plan.steps) {
            CHECK(step.remove_mm > 0.0);
            CHECK(step.closed_mm >= 0.0254);
            CHECK(step.half_stop_mm.value_or(1.0) >= 0.0254);
        }
        CHECK_THAT(plan.steps.back().closed_mm, WithinAbs(0.0264, 1e-4));
        CHECK(taken(plan, TangFace::open) == 0.0);
        CHECK_THAT(taken(plan, TangFace::closed), WithinAbs(plan.removed.closed_mm, 1e-12));
    }
}

TEST_CASE("a pass leaves its reserve, but the last of a face", "[shop][closed form]") {
    const Design design = designs::heron();
    PlanRules rules;
    rules.reserve = 0.25;
    const FitPlan plan = fit_plan(design, measured(design, 0.5, 0.5, FitState::loaded), rules);
    double left = plan.removed.half_stop_mm;
    for (const FitStep& step : plan.steps) {
        if (step.face != TangFace::half_stop) continue;
        CHECK_THAT(step.remove_mm, WithinAbs(left > 0.0254 ? 0.75 * left : left, 1e-12));
        left -= step.remove_mm;
    }
    CHECK_THAT(left, WithinAbs(0.0, 1e-12));
}

TEST_CASE("a fit that is done needs nothing", "[shop][property]") {
    const Design design = designs::heron();
    const FitPlan plan = fit_plan(design, measured(design, 0.0260, 0.0256, FitState::loaded));
    CHECK(plan.steps.empty());
    CHECK(notes(plan, "fit-done"));
}

TEST_CASE("a low reading is met by the open face, and its price is told", "[shop][property]") {
    const Design design = designs::heron();
    const FitPlan plan = fit_plan(design, measured(design, -0.05, 0.3, FitState::loaded));
    CHECK(plan.removed.open_mm > 0.05);
    CHECK(plan.removed.half_stop_mm < 1e-6);
    CHECK(notes(plan, "lowers-open"));
    CHECK_THAT(plan.done.own().fit.preload_mm, WithinAbs(0.9 - plan.removed.open_mm, 1e-12));
    CHECK_THAT(*plan.steps.back().half_stop_mm, WithinAbs(0.0264, 1e-4));
    CHECK_THAT(plan.steps.back().closed_mm, WithinAbs(0.0264, 1e-4));
}

TEST_CASE("kick and closed face move the tip against each other", "[shop][property]") {
    Design design = designs::plover();
    design.own().blade.length_mm = 80.0;
    const Measured read = measured(design, 0.1, 0.08, FitState::loaded);
    const auto end_tip = [&](ClosedGrind by) {
        PlanRules rules;
        rules.closed_by = by;
        return *fit_plan(design, read, rules).steps.back().tip_mm;
    };
    CHECK(end_tip(ClosedGrind::closed) > 0.02);
    CHECK(end_tip(ClosedGrind::kick) < -0.02);
    CHECK(std::abs(end_tip(ClosedGrind::level)) < 0.1 * end_tip(ClosedGrind::closed));
}

TEST_CASE("the least removal is no more than any other", "[shop][property]") {
    const Design design = designs::plover();
    const Measured read = measured(design, 0.1, 0.06, FitState::loaded);
    const auto total = [&](ClosedGrind by) {
        PlanRules rules;
        rules.closed_by = by;
        const FaceDepths off = fit_plan(design, read, rules).removed;
        return off.closed_mm + off.kick_mm;
    };
    const double least = total(ClosedGrind::least);
    for (const ClosedGrind by : {ClosedGrind::closed, ClosedGrind::kick, ClosedGrind::level}) {
        CHECK(least <= total(by) + 1e-9);
    }
}

TEST_CASE("steel that runs out is named with its face", "[shop][abuse]") {
    const Design design = designs::heron();
    PlanRules rules;
    rules.material.half_stop_mm = 0.1;
    CHECK_THROWS_WITH(fit_plan(design, measured(design, 0.5, 0.3, FitState::loaded), rules),
                      ContainsSubstring("face-runs-out: face half_stop, left 0.1 mm, needed 0."));
    PlanRules by_kick;
    by_kick.closed_by = ClosedGrind::kick;
    const Design kicked = designs::plover();
    CHECK_THROWS_WITH(fit_plan(kicked, measured(kicked, 0.1, 0.4, FitState::loaded), by_kick),
                      ContainsSubstring("face-runs-out: face kick, left 0.2 mm"));
    rules.material = {};
    rules.material.open_mm = 0.01;
    CHECK_THROWS_WITH(fit_plan(design, measured(design, -0.1, 0.3, FitState::loaded), rules),
                      ContainsSubstring("face-runs-out: face open, left 0.01 mm"));
}

TEST_CASE("where one face runs out the other goes on", "[shop][property]") {
    const Design design = designs::plover();
    PlanRules rules;
    rules.material.closed_mm = 0.02;
    const FitPlan plan = fit_plan(design, measured(design, 0.1, 0.08, FitState::loaded), rules);
    CHECK_THAT(plan.removed.closed_mm, WithinAbs(0.02, 1e-9));
    CHECK(plan.removed.kick_mm > 0.0);
    CHECK_THAT(plan.steps.back().closed_mm, WithinAbs(0.0264, 1e-4));
}

TEST_CASE("bad rules and readings are refused", "[shop][abuse]") {
    const Design design = designs::heron();
    const Measured good = measured(design, 0.3, 0.3, FitState::loaded);
    const auto refused = [&](auto spoil) {
        PlanRules rules;
        spoil(rules);
        CHECK_THROWS_AS(fit_plan(design, good, rules), InvalidInput);
    };
    refused([](PlanRules& r) { r.target_mm = 1.5; });
    refused([](PlanRules& r) { r.target_mm = std::nan(""); });
    refused([](PlanRules& r) { r.repeatability_mm = -0.001; });
    refused([](PlanRules& r) { r.reserve = 0.9; });
    refused([](PlanRules& r) { r.material.kick_mm = -1.0; });
    Measured bad = good;
    bad.closed_mm = 4.0;
    CHECK_THROWS_AS(fit_plan(design, bad), InvalidInput);
    bad = good;
    bad.half_stop_mm.reset();
    CHECK_THROWS_AS(fit_plan(design, bad), InvalidInput);
    CHECK_THROWS_AS(fit_plan(designs::wren(), good), InvalidInput);
}

TEST_CASE("a tang that no grinder makes is told with the readings it would need", "[shop][abuse]") {
    const Design design = designs::heron();
    CHECK_THROWS_WITH(as_measured(design, {.half_stop_mm = 0.1, .closed_mm = -2.9}),
                      "no-such-tang: state loaded, half_stop 0.1 mm, closed -2.9 mm");
    CHECK_THROWS_WITH(
        as_measured(designs::wren(),
                    {.state = FitState::unloaded, .half_stop_mm = {}, .closed_mm = -2.9}),
        ContainsSubstring("no-such-tang: state unloaded, closed -2.9 mm"));
}

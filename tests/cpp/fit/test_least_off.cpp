#include "backspring/fit/blades_plan.hpp"
#include "catch.hpp"
#include "designs.hpp"
#include "several_blades.hpp"

using namespace backspring;

namespace {

constexpr double kWantedMm = 0.0254, kDialMm = 0.004;
constexpr std::array kFaces{TangFace::open, TangFace::half_stop, TangFace::closed, TangFace::kick};

PlanRules with_dial(double repeatability_mm, double least_off_mm) {
    PlanRules rules;
    rules.repeatability_mm = repeatability_mm;
    rules.least_off_mm = least_off_mm;
    return rules;
}

FitPlan planned(const Design& design, double half_stop, double closed, const PlanRules& rules) {
    Measured read{.half_stop_mm = std::nullopt, .closed_mm = kWantedMm + closed};
    if (design.own().tang.half_stop_mm) read.half_stop_mm = kWantedMm + half_stop;
    return fit_plan(design, read, rules);
}

}  // namespace

TEST_CASE("less than the least stays on its face", "[shop][property]") {
    int left = 0;
    for (const auto& [name, design] : designs::all()) {
        for (const double half_stop : {0.002, 0.005, 0.011}) {
            for (const double closed : {0.003, 0.0055, 0.03}) {
                INFO(name << ", " << half_stop << " and " << closed << " mm over the target");
                const FitPlan plan =
                    planned(design, half_stop, closed, with_dial(kDialMm, kDialMm));
                FaceDepths off;
                for (const FitStep& step : plan.steps) {
                    CHECK(step.remove_mm >= kDialMm);
                    off.of(step.face) += step.remove_mm;
                }
                for (const TangFace face : kFaces) {
                    CHECK_THAT(plan.removed.of(face), WithinAbs(off.of(face), 1e-12));
                    CHECK(plan.left_standing.of(face) < kDialMm);
                    left += plan.left_standing.of(face) > 0.0 ? 1 : 0;
                }
            }
        }
    }
    CHECK(left > 0);
}

TEST_CASE("with no least a plan is as long as it was", "[shop][property]") {
    const Design design = designs::heron();
    const FitPlan whole = planned(design, 0.03, 0.0055, with_dial(kDialMm, 0.0));
    const FitPlan least = planned(design, 0.03, 0.0055, with_dial(kDialMm, kDialMm));
    CHECK(whole.left_standing.closed_mm == 0.0);
    CHECK(whole.removed.closed_mm > 0.0);
    CHECK(least.removed.closed_mm == 0.0);
    // What stands is what else would come off; what comes off the other face is as it was.
    CHECK_THAT(least.left_standing.closed_mm, WithinAbs(whole.removed.closed_mm, 1e-12));
    CHECK_THAT(least.removed.half_stop_mm, WithinAbs(whole.removed.half_stop_mm, 1e-12));
    CHECK(least.steps.size() < whole.steps.size());
}

TEST_CASE("a small share waits for the next, if that makes it enough", "[shop][closed form]") {
    const Design design = designs::heron();
    PlanRules rules = with_dial(0.002, 0.0);
    rules.reserve = 0.8;
    const auto whole = [&] {
        PlanRules all = rules;
        return planned(design, 0.03, 0.008, all);
    }();
    std::vector<double> closed;
    for (const FitStep& step : whole.steps) {
        if (step.face == TangFace::closed) closed.push_back(step.remove_mm);
    }
    // The closed face ends only once the half-stop face is done: first a fifth, then the rest.
    REQUIRE(closed.size() >= 2);
    rules.least_off_mm = closed.front() + 1e-6;
    const FitPlan least = planned(design, 0.03, 0.008, rules);
    CHECK_THAT(least.removed.closed_mm, WithinAbs(whole.removed.closed_mm, 1e-12));
    CHECK(least.left_standing.closed_mm == 0.0);
    std::size_t steps = 0;
    for (const FitStep& step : least.steps) steps += step.face == TangFace::closed ? 1 : 0;
    CHECK(steps < closed.size());
}

TEST_CASE("with nothing worth a pass the fit is done, and the knife stays as it is",
          "[shop][property]") {
    const Design design = designs::heron();
    const FitPlan plan = planned(design, 0.0046, 0.0056, with_dial(kDialMm, kDialMm));
    CHECK(plan.steps.empty());
    CHECK(plan.passes == 0);
    CHECK(plan.left_standing.half_stop_mm > 0.0);
    CHECK(plan.left_standing.closed_mm > 0.0);
    CHECK(*fit_readings(plan.done).loaded.closed_mm == *fit_readings(plan.now).loaded.closed_mm);
    REQUIRE_FALSE(plan.notices.empty());
    CHECK(plan.notices.front().code == NoticeCode::fit_done);
}

TEST_CASE("the open face goes by less than the least, for what else goes counts on it",
          "[shop][property]") {
    const FitPlan plan = planned(designs::heron(), -0.0045, 0.02, with_dial(0.002, 0.02));
    CHECK(plan.removed.open_mm > 0.0);
    CHECK(plan.removed.open_mm < 0.02);
    CHECK(plan.left_standing.open_mm == 0.0);
}

TEST_CASE("of several blades a step reads as what was ground before it leaves the knife",
          "[shop][blades][property]") {
    const PlanRules rules = with_dial(0.0025, 0.0025);
    int stands = 0;
    for (const Design& drawn : {designs::bunting(SupportKind::clamped), designs::whinchat()}) {
        for (const double closed : {0.0285, 0.0295, 0.0305, 0.032}) {
            std::vector<BladeMeasured> read;
            std::vector<FittedBlade> blades;
            for (std::size_t i = 0; i < drawn.blades.size(); ++i) {
                Measured each{.half_stop_mm = std::nullopt, .closed_mm = i == 0 ? closed : 0.1};
                if (drawn.blades[i].tang.half_stop_mm) each.half_stop_mm = 0.12;
                read.push_back({.blade = i, .measured = each, .unknowns = {}});
                blades.push_back({i, {}});
            }
            const BladesPlan plan =
                fit_plan(as_measured(drawn, read), blades, FitState::loaded, rules);
            for (const FitPlan& own : plan.blades) {
                for (const TangFace face : kFaces) stands += own.left_standing.of(face) > 0.0;
            }
            Design knife = plan.now;
            int number = 0;
            for (const FitStep& step : plan.steps) {
                for (std::size_t i = 0; i < knife.blades.size(); ++i) {
                    if (knife.blades[i].name != step.blade) continue;
                    FaceDepths off;
                    off.of(step.face) = step.remove_mm;
                    knife.blades[i] = take_off(knife.blades[i], off);
                    const Readings shown = lowest_readings(seen_from(knife, i));
                    CHECK_THAT(step.closed_loaded_mm, WithinAbs(*shown.closed_mm, 1e-9));
                }
                CHECK(step.remove_mm >= rules.least_off_mm);
                CHECK(step.step == ++number);
            }
            CHECK(plan.steps.back().pass_number == plan.passes);
        }
    }
    CHECK(stands > 0);
}

TEST_CASE("a least beyond any dial is refused", "[shop][abuse]") {
    for (const double least_mm : {-0.001, 0.3, std::nan("")}) {
        CHECK_THROWS_AS(planned(designs::heron(), 0.1, 0.1, with_dial(0.0, least_mm)),
                        InvalidInput);
    }
}

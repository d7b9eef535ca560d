#include "backspring/design/cases.hpp"
#include "backspring/fit/allowance.hpp"
#include "backspring/fit/blades_plan.hpp"
#include "catch.hpp"
#include "several_blades.hpp"

using namespace backspring;

namespace {

std::vector<std::pair<std::string, Design>> all_of_several() {
    return {{"one pin", designs::bunting(SupportKind::clamped)},
            {"two pins", designs::bunting(SupportKind::two_pins)},
            {"side by side", designs::whinchat()}};
}

/// Readings as a bench has them of a knife with every face proud.
std::vector<BladeMeasured> proud(const Design& design) {
    std::vector<BladeMeasured> all;
    for (std::size_t i = 0; i < design.blades.size(); ++i) {
        const double more = 0.03 * static_cast<double>(i);
        Measured read{.half_stop_mm = std::nullopt, .closed_mm = 0.15 + more};
        if (design.blades[i].tang.half_stop_mm) read.half_stop_mm = 0.21 - more;
        all.push_back({.blade = i, .measured = read, .unknowns = {}});
    }
    return all;
}

std::vector<FittedBlade> all_fitted(const Design& design) {
    std::vector<FittedBlade> all;
    for (std::size_t i = 0; i < design.blades.size(); ++i) all.push_back({i, {}});
    return all;
}

double lowest_mm(const Design& design) {
    double least = 1.0;
    for (std::size_t i = 0; i < design.blades.size(); ++i) {
        const Readings shown = lowest_readings(seen_from(design, i));
        least = std::min({least, *shown.closed_mm, shown.half_stop_mm.value_or(1.0)});
    }
    return least;
}

Design with_off(Design design, const FitStep& step) {
    FaceDepths off;
    off.of(step.face) = step.remove_mm;
    for (Blade& blade : design.blades) {
        if (blade.name == step.blade) blade = take_off(blade, off);
    }
    return design;
}

}  // namespace

TEST_CASE("fitted together, every blade reads the target where it is lowest",
          "[shop][blades][property]") {
    for (const auto& [name, design] : all_of_several()) {
        INFO(name);
        const std::vector<Allowance> left = allowances(design, 0.02);
        Design fitted = design;
        for (std::size_t i = 0; i < left.size(); ++i) fitted.blades[i].tang = left[i].tang;
        for (std::size_t i = 0; i < left.size(); ++i) {
            const Design seen = seen_from(fitted, i);
            const Readings lowest = lowest_readings(seen);
            CHECK_THAT(*lowest.closed_mm, WithinAbs(0.02, 1e-7));
            if (lowest.half_stop_mm) CHECK_THAT(*lowest.half_stop_mm, WithinAbs(0.02, 1e-7));
            // No position of any other blade, read or not, has the back lower than that.
            for (const Design& one : cases(seen)) {
                const Readings shown = fit_readings(one).loaded;
                CHECK(*shown.closed_mm > 0.02 - 1e-7);
                CHECK(shown.half_stop_mm.value_or(1.0) > 0.02 - 1e-7);
            }
        }
    }
}

TEST_CASE("several blades as measured read as they were measured", "[shop][blades][property]") {
    for (const auto& [name, design] : all_of_several()) {
        INFO(name);
        const std::vector<BladeMeasured> read = proud(design);
        const Design now = as_measured(design, read);
        for (const BladeMeasured& one : read) {
            const Readings shown = readings_in(FitState::loaded, seen_from(now, one.blade));
            CHECK_THAT(*shown.closed_mm, WithinAbs(one.measured.closed_mm, 1e-7));
            if (!shown.half_stop_mm) continue;
            CHECK_THAT(*shown.half_stop_mm, WithinAbs(*one.measured.half_stop_mm, 1e-7));
        }
    }
}

TEST_CASE("a plan of several blades ends all of them at the aim, no step below the target",
          "[shop][blades][property]") {
    for (const auto& [name, design] : all_of_several()) {
        INFO(name);
        const Design now = as_measured(design, proud(design));
        const BladesPlan plan = fit_plan(now, all_fitted(design), FitState::loaded);
        REQUIRE(plan.passes > 1);
        Design knife = now;
        for (const FitStep& step : plan.steps) {
            knife = with_off(knife, step);
            CHECK(step.remove_mm > 0.0);
            CHECK(lowest_mm(knife) > 0.0254);
        }
        for (std::size_t i = 0; i < design.blades.size(); ++i) {
            const Readings shown = lowest_readings(seen_from(knife, i));
            // What is left standing is less than half a hair, and so is what is not waited for.
            CHECK_THAT(*shown.closed_mm, WithinAbs(plan.aim_mm, 0.0006));
            CHECK_THAT(shown.half_stop_mm.value_or(plan.aim_mm), WithinAbs(plan.aim_mm, 0.0006));
            CHECK(plan.blades[i].now.own().name == design.blades[i].name);
            CHECK_THAT(plan.done.blades[i].tang.closed_mm,
                       WithinAbs(knife.blades[i].tang.closed_mm, 1e-12));
        }
    }
}

TEST_CASE("a blade that is planned alone among others ends nowhere low", "[shop][blades]") {
    for (const auto& [name, design] : all_of_several()) {
        INFO(name);
        const Design now = as_measured(design, proud(design));
        for (std::size_t i = 0; i < design.blades.size(); ++i) {
            const FitPlan plan = fit_plan(seen_from(now, i), FitState::loaded);
            const Readings shown = lowest_readings(plan.done);
            CHECK_THAT(*shown.closed_mm, WithinAbs(plan.aim_mm, 0.0006));
            CHECK(plan.steps.front().blade == design.blades[i].name);
        }
    }
}

TEST_CASE("what comes off one tang moves the reading at the other end a little",
          "[shop][blades][property]") {
    Design fitted = designs::bunting(SupportKind::clamped);
    const std::vector<Allowance> left = allowances(fitted);
    for (std::size_t i = 0; i < left.size(); ++i) fitted.blades[i].tang = left[i].tang;
    for (const BladeLever& row : blade_levers(fitted)) {
        for (const BladeMoves& moves : row.moves) {
            INFO(row.blade << " " << name_of(row.face) << " moves " << moves.blade);
            const bool own = moves.blade == row.blade;
            if (row.face == TangFace::closed && own) CHECK(*moves.closed_mm < -0.08);
            if (row.face == TangFace::open && own) CHECK(*moves.closed_mm > 0.08);
            if (!own) CHECK(std::abs(*moves.closed_mm) < 0.02);
        }
    }
    // The rates foretell what a hair more of the other tang moves.
    Design proud = fitted;
    proud.blades[1] = take_off(proud.blades[1], {.closed_mm = -0.004});
    const double moved = *lowest_readings(proud).closed_mm - *lowest_readings(fitted).closed_mm;
    const BladeLever row = blade_levers(fitted).back();
    REQUIRE(row.blade == "pen");
    CHECK_THAT(moved, WithinAbs(-0.04 * *row.moves.front().closed_mm, 1e-5));
}

TEST_CASE("a blade of several without a measurement stays as drawn", "[shop][blades]") {
    const Design design = designs::bunting(SupportKind::two_pins);
    const Design now = as_measured(design, {proud(design).back()});
    CHECK(now.blades[0].tang.closed_mm == design.blades[0].tang.closed_mm);
    CHECK(now.blades[1].tang.closed_mm > design.blades[1].tang.closed_mm);
    const BladesPlan plan = fit_plan(now, {{.blade = 1, .unknowns = {}}}, FitState::loaded);
    for (const FitStep& step : plan.steps) CHECK(step.blade == "pen");
}

TEST_CASE("a tang that another blade keeps the spring off reads as measured all the same",
          "[shop][blades][property]") {
    // Faces far below the open one of the blade beside it: until they stand above that, what is
    // put on them moves nothing.
    Design design = designs::whinchat();
    design.own().tang.half_stop_mm = 4.2;
    design.own().tang.closed_mm = 4.2;
    const Measured read{.half_stop_mm = 0.12, .closed_mm = 0.09};
    const Readings drawn = readings_in(FitState::loaded, design);
    REQUIRE(*drawn.closed_mm < 0.05);
    const Readings shown = readings_in(FitState::loaded, as_measured(design, read));
    CHECK_THAT(*shown.half_stop_mm, WithinAbs(0.12, 1e-7));
    CHECK_THAT(*shown.closed_mm, WithinAbs(0.09, 1e-7));
}

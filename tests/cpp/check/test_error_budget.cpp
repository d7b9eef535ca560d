#include <algorithm>
#include <cmath>

#include "backspring/check/error_budget.hpp"
#include "catch.hpp"
#include "designs.hpp"
#include "several_blades.hpp"

using namespace backspring;

namespace {

constexpr double kThouMm = 0.0254;

const BudgetRow* row_of(const std::vector<BudgetRow>& rows, const std::string& effect) {
    const auto found = std::ranges::find(rows, effect, &BudgetRow::effect);
    return found == rows.end() ? nullptr : &*found;
}

BudgetStated some_steel() { return {.modulus_mpa = Ends{190000.0, 215000.0}}; }

}  // namespace

// Nonlinear beam (tests/oracle), a bow of 1 mm outward and inward: pull +0.28 and -0.28 %, readings
// on a stop in the middle +0.011 and -0.011 thou. The place of contact is held here, and a bowed
// spring is longer by what the pins stand apart: pull within 0.12 % of the peak.
TEST_CASE("a bow is sized as on a nonlinear beam", "[budget]") {
    const Design design = designs::heron();
    Solution solution(design);
    const BudgetRow bow = bow_budget(solution).value();
    CHECK_THAT(*bow.pull_high_share, WithinAbs(0.0028, 0.0012));
    CHECK_THAT(*bow.pull_low_share, WithinAbs(-0.0028, 0.0012));
    CHECK_THAT(*bow.reading_high_mm / kThouMm, WithinAbs(0.011, 0.002));
    CHECK_THAT(*bow.reading_low_mm / kThouMm, WithinAbs(-0.011, 0.002));
}

TEST_CASE("a bow of nothing is the same spring", "[budget][property]") {
    const Design design = designs::heron();
    const Spring level = bowed(design.spring, design.own().pad, 0.0);
    for (double x = -37.0; x < 36.0; x += 0.5) {
        CHECK_THAT(thickness_mm(level.thickness, x),
                   WithinRel(thickness_mm(design.spring.thickness, x), 1e-12));
    }
    Design again = design;
    again.spring = level;
    Solution before(design), after(again);
    CHECK_THAT(*peak_torque_nmm(after), WithinRel(*peak_torque_nmm(before), 1e-9));
}

// Nonlinear beam: preload +0.03 mm +1.5 % and -0.05 thou; E 190 instead of 205 GPa -7.3 %; slopes
// +0.24 %, readings +0.013 thou at half-stop.
TEST_CASE("preload, modulus and slopes are sized as on a nonlinear beam", "[budget]") {
    const ErrorBudget budget = error_budget(designs::heron(), some_steel());
    const BudgetRow* preload = row_of(budget.rows, "preload");
    REQUIRE(preload);
    CHECK_THAT(*preload->pull_high_share, WithinAbs(0.015, 0.0015));
    CHECK_THAT(*preload->reading_low_mm / kThouMm, WithinAbs(-0.05, 0.01));
    const BudgetRow* modulus = row_of(budget.rows, "modulus");
    REQUIRE(modulus);
    CHECK_THAT(*modulus->pull_low_share, WithinRel(190.0 / 205.0 - 1.0, 1e-6));
    CHECK_FALSE(modulus->reading_low_mm);
    const BudgetRow* slopes = row_of(budget.rows, "large-slopes");
    REQUIRE(slopes);
    CHECK_THAT(*slopes->reading_high_mm / kThouMm, WithinAbs(0.013, 0.005));
}

TEST_CASE("what solving leaves is far below what is left out", "[budget][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        Solution solution(design);
        const BudgetRow solver = solver_budget(solution);
        if (solver.pull_high_share) CHECK(*solver.pull_high_share < 1e-6);
        if (solver.reading_high_mm) CHECK(*solver.reading_high_mm < 1e-6);
    }
}

TEST_CASE("what is stated is not left out", "[budget][property]") {
    Design design = designs::heron();
    const auto has = [&](const char* effect, const BudgetStated& stated) {
        return row_of(error_budget(design, stated).rows, effect) != nullptr;
    };
    for (const char* effect : {"liners", "pin-clearance", "pivot-clearance", "bow", "modulus"}) {
        CHECK(has(effect, some_steel()));
    }
    const BudgetStated all{.pin_clearance = true, .pivot_clearance = true};
    design.frame.seat_mm_per_n = 1e-4;
    design.spring.mid_line = {{-38.0, 0.0}, {36.5, 0.0}};
    for (const char* effect : {"liners", "pin-clearance", "pivot-clearance", "bow", "modulus"}) {
        CHECK_FALSE(has(effect, all));
    }
    CHECK(has("preload", all));
}

TEST_CASE("a budget's sum is the root of its squares, side by side", "[budget][closed-form]") {
    const std::vector<BudgetRow> rows{
        {.effect = "a", .reading_low_mm = -3.0, .reading_high_mm = 3.0, .settled_by = "x"},
        {.effect = "b", .reading_low_mm = 1.0, .reading_high_mm = 4.0, .settled_by = "y"},
        {.effect = "c", .pull_low_share = -0.2, .pull_high_share = -0.1, .settled_by = "z"},
        {.effect = "d", .reading_low_mm = -9.0, .reading_high_mm = 0.0, .settled_by = "nothing"}};
    const BudgetSum sum = budget_sum(rows, 14.0);
    CHECK_THAT(sum.reading_mm.high, WithinRel(5.0, 1e-15));
    CHECK_THAT(sum.reading_mm.low, WithinRel(-std::sqrt(90.0), 1e-15));
    CHECK(sum.reading_worst_mm.low == -12.0);
    CHECK(sum.reading_worst_mm.high == 7.0);
    CHECK(sum.pull_share.low == -0.2);
    CHECK(sum.pull_share.high == 0.0);
    CHECK(sum.beyond_target);
    CHECK_FALSE(budget_sum(rows, 15.0).beyond_target);
    CHECK_FALSE(budget_sum(rows, std::nullopt).beyond_target);
    // Without "b" 2.0 less of width, without "a" 1.5; "d" cannot be settled.
    CHECK(sum.closes_most == "b");
    CHECK(budget_sum({}, 1.0).closes_most.empty());
}

TEST_CASE("a budget is greatest first and closed most by its stop", "[budget]") {
    const ErrorBudget budget = error_budget(designs::heron(), some_steel());
    CHECK(budget.rows.front().effect == "stop");
    CHECK(budget.sum.closes_most == "stop");
    CHECK(budget.rows.back().effect == "solver");
    Design stated = designs::heron();
    stated.own().fit.stop = {.place = StopPlace::middle, .face_mm = 4.5};
    CHECK(error_budget(stated, some_steel()).sum.closes_most == "liners");
}

TEST_CASE("a blade that does not work has a budget, too", "[budget][property]") {
    Design slack = designs::heron();
    slack.own().fit.preload_mm = 0.0;
    slack.own().tang.closed_mm = 0.5 * slack.own().tang.open_mm;
    CHECK_NOTHROW(error_budget(slack, some_steel()));
    // One station: even all along.
    Design even = designs::heron();
    even.spring.thickness = {{0.0, 2.6}};
    CHECK_NOTHROW(error_budget(even, some_steel()));
    for (const Design& shared : {designs::bunting(SupportKind::two_pins), designs::whinchat()}) {
        CHECK_NOTHROW(error_budget(shared, some_steel()));
    }
}

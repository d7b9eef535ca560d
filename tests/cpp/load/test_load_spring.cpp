#include <algorithm>

#include "backspring/load/load_spring.hpp"
#include "backspring/tang/envelope.hpp"
#include "catch.hpp"
#include "several_blades.hpp"

using namespace backspring;

namespace {

SpringLoading pulled_at(const Design& design, double at_mm, double clearance_mm = 0.25) {
    return load_spring(design, {.at_mm = at_mm, .clearance_mm = clearance_mm, .lever_mm = {}});
}

}  // namespace

// Young and Budynas, Roark's Formulas for Stress and Strain, 7th ed. 2002, table 8.1, case 1a: end
// load on a cantilever, y(x) = P x^2 (3 s - x)/(6 E I) up to the load, P s^2 (3 x - s)/(6 E I)
// beyond it.
TEST_CASE("a clamped strip is pulled out by the handbook's cantilever", "[load][closed form]") {
    const Design design = designs::dunlin();
    const double e = 205000.0, b = 2.3, t = 2.6, a = 32.0, s = 20.0;
    const double inertia = b * t * t * t / 12.0;
    const SpringLoading loading = pulled_at(design, s);
    const double x = loading.clears_last_mm;
    REQUIRE(x > s);
    // The flat of the tang stands the preload's share above the free face, the corner less.
    const double round = std::max(0.0, 32.0 - 4.62 + 0.7 - x);
    const double top = 4.5 - 0.7 + std::sqrt(0.7 * 0.7 - round * round);
    const double lift = top + 0.25 - (4.5 - 0.9 * x / a);
    const double shear = 1.2 * s / (e / 2.58 * b * t);
    const double force = lift / (s * s * (3.0 * x - s) / (6.0 * e * inertia) + shear);
    CHECK_THAT(loading.force_n, WithinRel(force, 1e-12));
    const double there = s * s * s / (3.0 * e * inertia) + shear;
    CHECK_THAT(loading.movement_mm, WithinRel(force * there, 1e-12));
    const double stress = force * s * 0.5 * t / inertia;
    CHECK_THAT(loading.peak_stress_mpa, WithinRel(stress, 1e-12));
    CHECK(loading.peak_stress_station_mm == 0.0);
    CHECK_THAT(*loading.yield_margin, WithinRel(1300.0 / stress, 1e-12));
    CHECK_THAT(*loading.stop_before_mm, WithinRel(1300.0 / stress * force * there, 1e-12));
    CHECK_THAT(*loading.stop_before_low_mm, WithinRel(1200.0 / stress * force * there, 1e-12));
    CHECK_FALSE(loading.rear_pin_force_n);
    CHECK_FALSE(loading.rear_pin_last);
}

// Beam overhanging one support, load at distance s beyond it: y(s) = P s^2 (L + s)/(3 E I), support
// forces P s/L and P (1 + s/L); the same book's case 1a with case 3e of the span turning under its
// end moment P s: theta = P s L/(3 E I).
TEST_CASE("an overhang on two supports moves and bears as in the handbook", "[load][closed form]") {
    Design design = designs::dunlin();
    design.spring.thickness = {{-40.0, 2.6}, {36.5, 2.6}};
    design.spring.support = {
        .kind = SupportKind::two_pins, .rear_pin_mm = 34.0, .root_stiffness_nmm_per_rad = 0.0};
    const double e = 205000.0, b = 2.3, t = 2.6, rear = 34.0, s = 25.0;
    const double inertia = b * t * t * t / 12.0, area = e / 2.58 * b * t / 1.2;
    const SpringLoading loading = pulled_at(design, s);
    const double bent = s * s * (rear + s) / (3.0 * e * inertia);
    const double sheared = s / area + s * s / (rear * area);
    CHECK_THAT(loading.movement_mm, WithinRel(loading.force_n * (bent + sheared), 1e-12));
    CHECK_THAT(*loading.rear_pin_force_n, WithinRel(loading.force_n * s / rear, 1e-12));
    CHECK_THAT(*loading.middle_pin_force_n, WithinRel(loading.force_n * (1.0 + s / rear), 1e-12));
}

TEST_CASE("the pad clears the tang by the clearance at its nearest place", "[load][property]") {
    for (const auto& [name, design] : designs::all()) {
        for (const double at : {12.0, 25.0, 30.0}) {
            INFO(name << " " << at);
            const SpringLoading loading = pulled_at(design, at);
            const Joint joint = designs::joint_of(design);
            const TurnedOutline tang(joint.outline.body, 0.0);
            double least = 1.0;
            for (double x = joint.pad.start_mm; x <= joint.pad.end_mm; x += 0.001) {
                const auto top = tang.top_at(x - joint.pivot_mm);
                if (!top) continue;
                const double lifted =
                    joint.face_mm + joint.face_slope * x +
                    loading.force_n * deflection_per_force(joint.flexibility, x, at);
                least = std::min(least, lifted - top->y_mm);
            }
            // Between two looks 0.001 mm apart the gap's bottom is flat to far below 1e-6 mm.
            CHECK_THAT(least, WithinAbs(0.25, 1e-6));
        }
    }
}

TEST_CASE("a spring twice as wide takes twice the force at the same stress", "[load][scaling]") {
    Design wide = designs::heron();
    wide.spring.width_mm *= 2.0;
    const SpringLoading one = pulled_at(designs::heron(), 25.0), two = pulled_at(wide, 25.0);
    CHECK_THAT(two.force_n, WithinRel(2.0 * one.force_n, 1e-12));
    CHECK_THAT(two.movement_mm, WithinRel(one.movement_mm, 1e-12));
    CHECK_THAT(two.peak_stress_mpa, WithinRel(one.peak_stress_mpa, 1e-12));
}

TEST_CASE("nearer to the tang it takes less force and leaves more margin", "[load][property]") {
    for (const auto& [name, design] : designs::all()) {
        INFO(name);
        const SpringLoading near = load_spring(design, PullOut{});
        const SpringLoading far = pulled_at(design, 0.5 * near.at_mm);
        CHECK(near.force_n < far.force_n);
        CHECK(*near.yield_margin > *far.yield_margin);
    }
}

TEST_CASE("the Heron at 25 mm takes 26 pounds and twice as much to yield", "[load][demo]") {
    const SpringLoading loading = pulled_at(designs::heron(), 25.0);
    CHECK_THAT(loading.force_n, WithinAbs(115.0, 1.0));
    CHECK_THAT(*loading.yield_margin, WithinAbs(2.1, 0.05));
    CHECK(loading.met);
    CHECK_THAT(pulled_at(designs::heron(), 8.0).force_n / 4.4482216, WithinAbs(131.0, 2.0));
}

TEST_CASE("the rear pin last takes the pin's own force at open", "[load][statics]") {
    const Design design = designs::heron();
    const auto last =
        load_spring(design, {.at_mm = 25.0, .clearance_mm = 0.0, .lever_mm = 170.0}).rear_pin_last;
    Solution solution(design);
    const Contact& open = solution.rests().open;
    REQUIRE(open.count == 1);
    const Touch& touch = open.touches[0];
    CHECK_THAT(last->force_n, WithinRel(touch.force_n * touch.x_mm / 34.0, 1e-12));
    CHECK_THAT(*last->lever_force_n, WithinRel(touch.force_n * touch.x_mm / 170.0, 1e-12));
    CHECK_THAT(last->hole_to_go_mm, WithinRel(0.9 * 34.0 / 32.0, 1e-12));
}

TEST_CASE("the margin asked for is the design's target, or 1", "[load]") {
    Design design = designs::heron();
    design.targets.yield_margin = 2.0;
    const SpringLoading near = pulled_at(design, 25.0), far = pulled_at(design, 8.0);
    CHECK(near.met);
    CHECK(near.wanted_margin == 2.0);
    CHECK_FALSE(far.met);
    design.targets.yield_margin.reset();
    CHECK(pulled_at(design, 8.0).met);
    design.own().fit.preload_mm = 1.8;
    CHECK_FALSE(pulled_at(design, 8.0).met);
    CHECK(pulled_at(design, 8.0).wanted_margin == 1.0);
}

TEST_CASE("a spring that stands clear of its tang comes off by itself", "[load][property]") {
    // Play in the pivot lifts the unbent spring off the tang, and no clearance is wanted.
    Design design = designs::heron();
    design.own().fit.preload_mm = 0.0;
    design.own().tang.pivot_clearance_mm = 0.05;
    design.targets.yield_margin = 3.0;
    const SpringLoading loading = pulled_at(design, 25.0, 0.0);
    CHECK(loading.force_n == 0.0);
    CHECK(loading.movement_mm == 0.0);
    CHECK(loading.met);
    CHECK_FALSE(loading.yield_margin);
    CHECK_FALSE(loading.stop_before_mm);
}

TEST_CASE("under a tang that reaches past the middle pin the spring is still pulled ahead of it",
          "[load][abuse]") {
    Design design = designs::wren();
    design.own().tang.round_end_mm = 40.0;
    CHECK(nearest_pull_mm(design) == kLeastPullStationMm);
    CHECK(nearest_pull_mm(designs::snipe()) == 32.0 - 4.62);
    CHECK(nearest_pull_mm(designs::heron()) == 27.0);
}

TEST_CASE("a pull that cannot be is refused with every fault", "[load][abuse]") {
    const auto faults_of = [](const Design& design, const PullOut& pull) {
        try {
            static_cast<void>(load_spring(design, pull));
        } catch (const InvalidInput& error) {
            return error.faults().size();
        }
        return std::size_t{0};
    };
    const double nan = std::nan("");
    CHECK(faults_of(designs::heron(), {.at_mm = 0.0, .clearance_mm = -1.0, .lever_mm = 0.0}) == 3);
    CHECK(faults_of(designs::heron(), {.at_mm = nan, .clearance_mm = nan, .lever_mm = nan}) == 3);
    CHECK(faults_of(designs::heron(), {.at_mm = 36.6, .clearance_mm = 5.1, .lever_mm = 1e9}) == 3);
    CHECK(faults_of(designs::dunlin(), {.at_mm = 20.0, .clearance_mm = 0.2, .lever_mm = 99.0}) ==
          1);
}

TEST_CASE("a spring is pulled out with all other blades out", "[load][blades]") {
    for (const SupportKind kind : {SupportKind::two_pins, SupportKind::clamped}) {
        const Design design = designs::bunting(kind);
        Design alone = design;
        alone.blades.resize(1);
        const SpringLoading both = load_spring(design, {}), one = load_spring(alone, {});
        CHECK(both.force_n == one.force_n);
        CHECK(both.peak_stress_mpa == one.peak_stress_mpa);
        Solution solution(design);
        CHECK(load_spring(solution, {}).force_n == one.force_n);
        if (both.rear_pin_last) CHECK(both.rear_pin_last->force_n == one.rear_pin_last->force_n);
    }
}

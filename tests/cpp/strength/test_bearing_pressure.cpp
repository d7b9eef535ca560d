#include <algorithm>
#include <cmath>
#include <numbers>

#include "backspring/action/rest.hpp"
#include "backspring/core/error.hpp"
#include "backspring/strength/bearing_pressure.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

constexpr double kLineModulus = 111900.0;

std::vector<BearingPressure> bearings(const Design& design) {
    const Action action = make_action(design);
    return bearing_pressures(Turns(action, {0.0, 180.0}), design.spring.width_mm, kLineModulus);
}

const BearingPressure* find(const std::vector<BearingPressure>& all, Bearer bearer) {
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const auto& b) { return b.bearer == bearer; });
    return found == all.end() ? nullptr : &*found;
}

Bearing at(const Design& design, double angle) {
    const Action action = make_action(design);
    const Contact contact = contact_at(action.joint, angle);
    return bearing_of(action.joint, contact.touches[0]);
}

}  // namespace

TEST_CASE("each stroke is carried by its own corner", "[strength][property]") {
    CHECK(at(designs::heron(), 50.0).bearer == Bearer::closed_corner);
    CHECK(at(designs::heron(), 140.0).bearer == Bearer::open_corner);
    CHECK(at(designs::heron(), 180.0).bearer == Bearer::open_corner);
    CHECK(at(designs::wren(), 90.0).bearer == Bearer::round_end);
    CHECK(at(designs::heron(), 140.0).radius_mm == 0.7);
}

TEST_CASE("at half-stop a face bears, which spreads the force", "[strength][property]") {
    const Design design = designs::heron();
    const Action action = make_action(design);
    const Rests rests = find_rests(action.joint, true);
    const Bearing bearing = bearing_of(action.joint, rests.half_stop->touches[0]);
    CHECK(bearing.bearer == Bearer::flat);
    CHECK(std::isinf(bearing.radius_mm));
}

TEST_CASE("the pad's own edge and the kick are told apart from the tang", "[strength][property]") {
    CHECK(find(bearings(designs::snipe()), Bearer::pad_edge) != nullptr);
    const auto with_kick = bearings(designs::plover());
    const BearingPressure* kick = find(with_kick, Bearer::kick);
    REQUIRE(kick != nullptr);
    CHECK(kick->radius_mm == 0.5);
    CHECK(kick->blade_angle_deg < 10.0);
}

TEST_CASE("pressure is Hertz's for the greatest force on each corner", "[strength][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Action action = make_action(design);
        const auto steps = sweep(action, 0.0, 180.0, 1.0);
        double greatest = 0.0;
        for (const auto& b : bearings(design)) {
            greatest = std::max(greatest, b.force_n);
            const bool round = b.radius_mm > 0.0 && std::isfinite(b.radius_mm);
            CHECK(b.line.has_value() == round);
            if (!round) continue;
            const double expected =
                std::sqrt(b.force_n * kLineModulus /
                          (std::numbers::pi * design.spring.width_mm * b.radius_mm));
            CHECK_THAT(b.line->peak_mpa, WithinRel(expected, 1e-12));
        }
        double largest_touch = 0.0;
        for (const Step& step : steps) {
            for (const Touch& touch : step.turn.contact.all()) {
                largest_touch = std::max(largest_touch, touch.force_n);
            }
        }
        CHECK(greatest >= largest_touch * (1.0 - 1e-12));
        CHECK_THAT(greatest, WithinRel(largest_touch, 2e-3));
    }
}

TEST_CASE("a sharp corner is a result, not an error", "[strength][abuse]") {
    Design design = designs::heron();
    design.own().tang.corner_open_mm = 0.0;
    const auto all = bearings(design);
    const BearingPressure* edge = find(all, Bearer::open_corner);
    REQUIRE(edge != nullptr);
    CHECK(edge->radius_mm == 0.0);
    CHECK(edge->force_n > 0.0);
    CHECK_FALSE(edge->line);
}

TEST_CASE("the worst pressure is the highest of all parts'", "[strength][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Action action = make_action(design);
        const Turns travel(action, {0.0, 180.0});
        const double width = design.spring.width_mm;
        double highest_mpa = 0.0;
        for (const BearingPressure& each : bearings(design)) {
            if (each.line) highest_mpa = std::max(highest_mpa, each.line->peak_mpa);
        }
        const auto worst = worst_bearing_pressure(travel, width, kLineModulus);
        REQUIRE(worst.has_value() == (highest_mpa > 0.0));
        if (worst) CHECK_THAT(worst->line->peak_mpa, WithinRel(highest_mpa, 1e-12));
    }
}

#include <cmath>
#include <vector>

#include "backspring/action/stroke.hpp"
#include "backspring/core/angle.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

// A smooth peak is found to about 1e-5 of its angle, so to 1e-9 of its height; one where the pad's
// edge comes to bear and torque has a kink, to rounding.
constexpr double kPeak = 1e-8;

struct Way {
    Action action;
    Contact from, to;
    Stroke stroke;
};

/// Every stroke of every design.
std::vector<Way> ways(bool rubbing = true) {
    std::vector<Way> made;
    for (auto& [name, design] : designs::all()) {
        if (!rubbing) design.friction = {};
        const Action action = make_action(design);
        const Rests rests = find_rests(action.joint, design.own().tang.half_stop_mm.has_value());
        const auto add = [&](const Contact& from, const Contact& to) {
            const auto stroke = make_stroke(action, from, to);
            REQUIRE(stroke);
            made.push_back({action, from, to, *stroke});
        };
        if (rests.half_stop) add(*rests.closed, *rests.half_stop);
        add(rests.half_stop ? *rests.half_stop : *rests.closed, rests.open);
    }
    return made;
}

}  // namespace

TEST_CASE("energy up and energy released keep the books", "[action][property]") {
    for (const Way& way : ways()) {
        const double crest = contact_at(way.action.joint, way.stroke.crest_angle_deg).energy_nmm;
        CHECK_THAT(way.stroke.energy_up_mj, WithinRel(crest - way.from.energy_nmm, 1e-12));
        CHECK_THAT(way.stroke.energy_released_mj, WithinRel(crest - way.to.energy_nmm, 1e-12));
        CHECK(way.stroke.energy_up_mj > 0.0);
        CHECK(way.stroke.energy_released_mj > 0.0);
    }
}

TEST_CASE("torque changes sign at the crest", "[action][property]") {
    for (const Way& way : ways()) {
        const double crest = way.stroke.crest_angle_deg;
        CAPTURE(crest);
        CHECK(contact_at(way.action.joint, crest + 0.01).torque_nmm < 0.0);
        // A round end is level before its crest.
        const double before = contact_at(way.action.joint, crest - 0.01).torque_nmm;
        CHECK(before > -1e-6);
        CHECK(way.stroke.from_deg < crest);
        CHECK(crest < way.stroke.to_deg);
    }
}

TEST_CASE("no angle of the stroke has more torque than its peaks", "[action][property]") {
    for (const Way& way : ways()) {
        const Stroke& stroke = way.stroke;
        for (const Step& step : sweep(way.action, stroke.from_deg, stroke.to_deg, 0.05)) {
            CAPTURE(step.turn.contact.blade_angle_deg);
            CHECK(step.turn.opening_nmm() <= stroke.peak_torque_nmm * (1.0 + kPeak));
            CHECK(-step.turn.closing_nmm() <= stroke.closing_peak_torque_nmm * (1.0 + kPeak));
        }
        CHECK_THAT(turn_at(way.action, stroke.peak_torque_angle_deg).opening_nmm(),
                   WithinRel(stroke.peak_torque_nmm, 1e-12));
        CHECK_THAT(-turn_at(way.action, stroke.closing_peak_angle_deg).closing_nmm(),
                   WithinRel(stroke.closing_peak_torque_nmm, 1e-12));
    }
}

TEST_CASE("friction takes its torque's work from the snap", "[action][oracle]") {
    constexpr int parts = 4000;
    for (const Way& way : ways()) {
        const Stroke& stroke = way.stroke;
        // From where torque and friction together let go, by the middle of many parts.
        double from = stroke.crest_angle_deg;
        while (turn_at(way.action, from).opening_nmm() > 0.0) from += 1e-3;
        double work = 0.0;
        for (int i = 0; i < parts; ++i) {
            const double angle = from + (stroke.to_deg - from) * (i + 0.5) / parts;
            work += turn_at(way.action, angle).friction_nmm * radians(stroke.to_deg - from) / parts;
        }
        const double released = contact_at(way.action.joint, from).energy_nmm - way.to.energy_nmm;
        CHECK_THAT(stroke.snap_energy_mj, WithinRel(released - work, 1e-4));
    }
}

TEST_CASE("a snap has less energy than was released", "[action][property]") {
    for (const Way& way : ways()) {
        CHECK(way.stroke.snap_energy_mj > 0.0);
        CHECK(way.stroke.snap_energy_mj < way.stroke.energy_released_mj);
    }
}

TEST_CASE("without friction all released energy goes into the snap", "[action][property]") {
    for (const Way& way : ways(false)) {
        CHECK_THAT(way.stroke.snap_energy_mj, WithinRel(way.stroke.energy_released_mj, 1e-9));
        CHECK_THAT(way.stroke.start_torque_nmm, WithinAbs(0.0, 1e-6));
    }
}

TEST_CASE("breaking away from a rest takes friction only", "[action][property]") {
    for (const Way& way : ways()) {
        const double friction = turn_at(way.action, way.stroke.from_deg).friction_nmm;
        CHECK_THAT(way.stroke.start_torque_nmm, WithinAbs(friction, 1e-6));
        CHECK_THAT(way.stroke.closing_start_torque_nmm,
                   WithinRel(-turn_at(way.action, way.stroke.to_deg).closing_nmm(), 1e-12));
    }
}

TEST_CASE("friction that eats the whole release leaves no snap", "[action][property]") {
    Design design = designs::heron();
    design.friction = {.spring = 1.0, .pivot = 1.0, .pivot_pin_mm = 3.2};
    const Action action = make_action(design);
    const Rests rests = find_rests(action.joint, true);
    const auto stroke = make_stroke(action, *rests.closed, *rests.half_stop);
    REQUIRE(stroke);
    CHECK(stroke->snap_energy_mj == 0.0);
}

TEST_CASE("where torque never turns there is no crest", "[action][abuse]") {
    const Action action = make_action(designs::heron());
    CHECK_FALSE(
        make_stroke(action, contact_at(action.joint, 10.0), contact_at(action.joint, 30.0)));
}

#include <algorithm>
#include <string>

#include "backspring/check/check.hpp"
#include "backspring/check/columns.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

bool notes(const Check& check, std::string_view code) {
    return std::any_of(check.notices.begin(), check.notices.end(),
                       [&](const Notice& notice) { return name_of(notice.code) == code; });
}

}  // namespace

TEST_CASE("a check of the worked example agrees with a slow solution", "[design][oracle]") {
    // Stated errors of that solution: forces 0.1 %, worst-of-travel figures 0.1 %.
    const Check result = check(designs::heron());
    CHECK_THAT(result.stiffness_n_per_mm, WithinRel(64.928, 1e-5));
    const Position* open = result.position("open");
    const Position* half = result.position("half_stop");
    const Position* closed = result.position("closed");
    REQUIRE((open && half && closed));
    CHECK_THAT(open->peak_stress_mpa, WithinRel(442.2, 1e-3));
    CHECK_THAT(open->peak_stress_station_mm, WithinAbs(0.0, 0.1));  // flat across the hole
    CHECK_THAT(half->peak_stress_mpa, WithinRel(450.0, 1e-3));
    CHECK(half->peak_stress_station_mm == 7.0);
    CHECK_THAT(closed->peak_stress_mpa, WithinRel(441.1, 1e-3));
    CHECK(closed->peak_stress_station_mm == 7.0);
    CHECK_THAT(result.travel.peak_force_n, WithinRel(179.36, 1e-3));
    CHECK_THAT(result.travel.peak_stress_mpa, WithinRel(1178.7, 1e-3));
}

TEST_CASE("positions and strokes come in turn", "[design][property]") {
    const Check square = check(designs::heron());
    REQUIRE(square.positions.size() == 3);
    CHECK(square.positions[0].name == "open");
    CHECK(square.positions[1].name == "half_stop");
    CHECK(square.positions[2].name == "closed");
    REQUIRE(square.strokes.size() == 2);
    CHECK(square.strokes[0].from_position == "closed");
    CHECK(square.strokes[0].to_position == "half_stop");
    CHECK(square.strokes[1].to_position == "open");
    CHECK_FALSE(square.position("ajar"));
}

TEST_CASE("without a half-stop there is one stroke", "[design][property]") {
    const Check round = check(designs::wren());
    CHECK_FALSE(round.position("half_stop"));
    REQUIRE(round.strokes.size() == 1);
    CHECK(round.strokes[0].from_position == "closed");
    CHECK(round.strokes[0].to_position == "open");
}

TEST_CASE("pull is torque over the nail nick's distance", "[design][closed form]") {
    for (const StrokeReport& report : check(designs::heron()).strokes) {
        CHECK(*report.peak_pull_n == report.stroke.peak_torque_nmm / 35.0);
        CHECK(*report.start_pull_n == report.stroke.start_torque_nmm / 35.0);
        CHECK(*report.closing_peak_pull_n == report.stroke.closing_peak_torque_nmm / 35.0);
        CHECK_THAT(*report.snap_speed_rad_per_s,
                   WithinRel(angular_speed_rad_per_s(report.stroke.snap_energy_mj, 52.0), 1e-14));
        CHECK_FALSE(report.tip_speed_m_per_s);
    }
    Design design = designs::heron();
    design.own().blade = {};
    CHECK_FALSE(check(design).strokes[0].peak_pull_n);
    CHECK_FALSE(check(design).strokes[0].snap_speed_rad_per_s);
}

TEST_CASE("nothing of the travel is worse than its worst", "[design][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Check result = check(design);
        const double start = result.position("closed")->blade_angle_deg;
        const Sweep table = sweep(design, 0.05, start, 180.0);
        // Found to 1e-6 of the angle; at a kink that is 1e-6 of the force and a little more.
        CHECK(table.force_n.maxCoeff() <= result.travel.peak_force_n * (1.0 + 1e-5));
        CHECK(table.peak_stress_mpa.maxCoeff() <= result.travel.peak_stress_mpa * (1.0 + 1e-5));
        CHECK_THAT(*result.travel.yield_margin,
                   WithinRel(1300.0 / result.travel.peak_stress_mpa, 1e-14));
        CHECK(*result.travel.yield_margin_low < *result.travel.yield_margin);
    }
}

TEST_CASE("targets are judged at their limits", "[design][property]") {
    Design design = designs::heron();
    const Check plain = check(design);
    REQUIRE(plain.targets.size() == 1);
    CHECK_FALSE(plain.targets[0].stated);
    CHECK(plain.targets[0].low == 1.0);
    const double pull = std::max(*plain.strokes[0].peak_pull_n, *plain.strokes[1].peak_pull_n);
    design.targets = {.pull_low_n = pull,
                      .pull_high_n = pull,
                      .yield_margin = *plain.travel.yield_margin * 1.0001,
                      .reading_mm = 0.08,
                      .openings = {},
                      .edge_gap_mm = {}};
    const Check judged = check(design);
    REQUIRE(judged.targets.size() == 3);
    CHECK(judged.targets[0].met);
    CHECK_FALSE(judged.targets[1].met);
    CHECK_FALSE(judged.targets[2].met);  // half-stop reads 0.087 mm
    CHECK_THAT(judged.targets[2].value.value(), WithinAbs(0.0869, 3e-4));
}

TEST_CASE("notices tell what a maker should know", "[design][property]") {
    Design design = designs::heron();
    CHECK_FALSE(notes(check(design), "yields"));
    CHECK_FALSE(notes(check(design), "may-yield"));
    design.strength.yield_mpa.low = 1100.0;
    CHECK(notes(check(design), "may-yield"));
    design.strength.yield_mpa = {1000.0, 900.0, 1100.0};
    CHECK(notes(check(design), "yields"));

    design = designs::heron();
    design.own().tang.kick = Kick{8.0, 0.2, 0.5};
    CHECK(notes(check(design), "kick-off-pad"));
    CHECK_FALSE(notes(check(designs::plover()), "kick-off-pad"));

    design = designs::heron();
    design.own().fit.preload_mm = 0.05;
    design.own().tang.closed_mm = 4.3;
    CHECK(notes(check(design), "lifted-off"));

    design = designs::heron();
    design.own().tang.half_stop_mm = 4.4;
    design.own().tang.corner_open_mm = 4.4;
    CHECK(notes(check(design), "not-held-open"));

    // A closed face that is nearly all corner and ends short of the pivot holds nothing.
    design = designs::heron();
    design.own().tang.corner_closed_mm = 4.35;
    design.own().tang.closed_mm = 5.38;
    design.own().tang.half_stop_mm = 4.36;
    design.own().tang.front_mm = 2.6;
    design.own().fit.preload_mm = 2.3;
    CHECK(notes(check(design), "not-held-closed"));
    CHECK_FALSE(notes(check(designs::heron()), "not-held-closed"));

    design = designs::heron();
    design.own().tang.corner_open_mm = 2.0;
    design.own().tang.corner_closed_mm = 4.35;
    design.own().tang.closed_mm = 4.37;
    design.own().tang.half_stop_mm = 4.95;
    design.own().fit.preload_mm = 2.4;
    CHECK(notes(check(design), "no-half-stop-rest"));
    CHECK_FALSE(notes(check(designs::heron()), "no-half-stop-rest"));

    design = designs::heron();
    design.own().fit.preload_mm = 4.0;
    CHECK(notes(check(design), "steep"));
    CHECK_FALSE(notes(check(designs::heron()), "steep"));
}

TEST_CASE("a loose blade is a finding, no exception", "[design][property]") {
    Design design = designs::heron();
    design.own().fit.preload_mm = 0.0;
    design.own().tang.half_stop_mm = 4.3;
    design.own().tang.closed_mm = 4.3;
    const Check result = check(design);
    CHECK(notes(result, "lifted-off"));
    REQUIRE(result.position("closed"));
    CHECK(result.position("closed")->force_n == 0.0);
    CHECK_FALSE(result.position("closed")->yield_margin);
}

TEST_CASE("a check refuses a broken design", "[design][abuse]") {
    Design design = designs::heron();
    design.spring.width_mm = 0.0;
    CHECK_THROWS_WITH(check(design), "spring.width: must be greater than 0 mm, got 0 mm");
}

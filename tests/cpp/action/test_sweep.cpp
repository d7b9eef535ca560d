#include <algorithm>
#include <cmath>
#include <limits>

#include "backspring/action/sweep_columns.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/core/error.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

double angle_of(const Step& step) { return step.turn.contact.blade_angle_deg; }

}  // namespace

TEST_CASE("a sweep includes both ends and shortens its last step", "[action][property]") {
    const Action action = make_action(designs::heron());
    const auto even = sweep(action, 0.0, 10.0, 2.5);
    REQUIRE(even.size() == 5);
    CHECK(angle_of(even.front()) == 0.0);
    CHECK(angle_of(even.back()) == 10.0);
    const auto uneven = sweep(action, 1.0, 10.0, 4.0);
    REQUIRE(uneven.size() == 4);
    CHECK(angle_of(uneven[2]) == 9.0);
    CHECK(angle_of(uneven[3]) == 10.0);
    CHECK(sweep(action, 7.0, 7.0, 1.0).size() == 1);
    CHECK(sweep(action, 0.0, 180.0, 0.1).size() == 1801);
}

TEST_CASE("steps that never arrive are refused", "[action][abuse]") {
    const Action action = make_action(designs::heron());
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS(sweep(action, 0.0, 180.0, 0.0), InvalidInput);
    CHECK_THROWS_AS(sweep(action, 0.0, 180.0, -1.0), InvalidInput);
    CHECK_THROWS_AS(sweep(action, 0.0, 180.0, nan), InvalidInput);
    CHECK_THROWS_AS(sweep(action, 180.0, 0.0, 1.0), InvalidInput);
    CHECK_THROWS_AS(sweep(action, 0.0, 180.0, 1e-5), InvalidInput);
    CHECK_THROWS_AS(sweep(action, nan, 180.0, 1.0), Error);
    CHECK_THROWS_AS(sweep(action, 0.0, nan, 1.0), Error);
    CHECK_THROWS_AS(sweep(action, 0.0, 226.0, 1.0), OutOfRange);
}

TEST_CASE("opening and closing torque lie friction apart on both sides", "[action][property]") {
    const Action action = make_action(designs::heron());
    for (const Step& step : sweep(action, 0.0, 180.0, 10.0)) {
        const double friction =
            friction_torque_nmm(step.turn.contact, action.friction, action.joint.pivot_mm);
        CHECK(step.turn.friction_nmm == friction);
        CHECK(step.turn.opening_nmm() == step.turn.contact.torque_nmm + friction);
        CHECK(step.turn.closing_nmm() == step.turn.contact.torque_nmm - friction);
    }
}

TEST_CASE("columns hold what the steps hold", "[action][property]") {
    const auto steps = sweep(make_action(designs::heron()), 0.0, 180.0, 30.0);
    const Sweep table = columns(steps);
    REQUIRE(table.force_n.size() == 7);
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const auto row = static_cast<Eigen::Index>(i);
        const Contact& contact = steps[i].turn.contact;
        CHECK(table.blade_angle_deg[row] == contact.blade_angle_deg);
        CHECK(table.force_n[row] == contact.force_n);
        CHECK(table.energy_mj[row] == contact.energy_nmm);
        CHECK(table.opening_torque_nmm[row] == steps[i].turn.opening_nmm());
        CHECK(table.closing_torque_nmm[row] == steps[i].turn.closing_nmm());
        CHECK(table.peak_stress_mpa[row] == steps[i].peak.stress_mpa);
        CHECK(table.peak_stress_station_mm[row] == steps[i].peak.station_mm);
    }
}

TEST_CASE("torque of the worked example agrees with a slow solution", "[action][oracle]") {
    // That solution took torque by differencing energy on a fixed grid of places. Its stated error
    // is 0.1 % of the force; at a corner a grid's step shifts the place by 0.004 mm, which is up
    // to 0.75 N mm or 0.2 % of the greatest torque, 377 N mm.
    struct Row {
        double angle_deg, torque_nmm;
    };
    const Row row = GENERATE(Row{10.0, 285.5}, Row{20.0, 307.4}, Row{45.0, 87.6}, Row{60.0, -172.8},
                             Row{75.0, -377.0}, Row{105.0, 292.6}, Row{120.0, 246.1},
                             Row{135.0, 66.1}, Row{150.0, -186.2}, Row{165.0, -367.4});
    CAPTURE(row.angle_deg);
    CHECK_THAT(contact_at(designs::heron(), row.angle_deg).torque_nmm,
               WithinAbs(row.torque_nmm, 2e-3 * 377.0));
}

TEST_CASE("worst force and stress of the worked example agree too", "[action][oracle]") {
    // Stated error 0.1 %, on steps of one degree.
    double force = 0.0, force_deg = 0.0, stress = 0.0, stress_deg = 0.0;
    for (const Step& step : sweep(make_action(designs::heron()), 0.0, 180.0, 1.0)) {
        if (step.turn.contact.force_n > force) {
            force = step.turn.contact.force_n;
            force_deg = angle_of(step);
        }
        if (step.peak.stress_mpa > stress) {
            stress = step.peak.stress_mpa;
            stress_deg = angle_of(step);
        }
    }
    CHECK_THAT(force, WithinRel(179.36, 1e-3));
    CHECK_THAT(stress, WithinRel(1178.7, 1e-3));
    CHECK(force_deg == 57.0);
    CHECK(stress_deg == 52.0);
}

TEST_CASE("work of the torque is the change of energy", "[action][convergence]") {
    for (const auto& [name, design] : designs::all()) {
        const Action action = make_action(design);
        for (const double step_deg : {0.1, 0.02}) {
            const auto steps = sweep(action, 0.0, 180.0, step_deg);
            double work = 0.0, unsure = 0.0;
            for (std::size_t i = 0; i + 1 < steps.size(); ++i) {
                const double a = steps[i].turn.contact.torque_nmm;
                const double b = steps[i + 1].turn.contact.torque_nmm;
                const double turn = radians(angle_of(steps[i + 1]) - angle_of(steps[i]));
                work += 0.5 * (a + b) * turn;
                unsure = std::max(unsure, 0.5 * std::abs(b - a) * turn);
            }
            const double gained =
                steps.back().turn.contact.energy_nmm - steps.front().turn.contact.energy_nmm;
            CAPTURE(name, step_deg);
            // A trapezoid is off by at most half its torque change times its width; only the few
            // that hold a kink come near, so four of the worst kind bound the sum.
            CHECK(std::abs(work - gained) < 4.0 * unsure);
        }
    }
}

#include <algorithm>
#include <vector>

#include "backspring/core/error.hpp"
#include "backspring/strength/plastic_bending.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

constexpr double kYieldMpa = 1000.0;

double elastic_mm(const Spring& spring, const std::vector<Load>& loads, double x) {
    const Flexibility flexibility = make_flexibility(spring);
    double sum = 0.0;
    for (const Load& load : loads) {
        sum += load.force_n * deflection_per_force(flexibility, x, load.x_mm);
    }
    return sum;
}

}  // namespace

TEST_CASE("held out within its elastic range a spring comes back", "[strength][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const std::vector<Hold> hold{{32.0, 0.5}};
        const BentSpring bent = bend_by_hold(design.spring, hold, 1e5);
        CHECK_THAT(elastic_mm(design.spring, bent.loads, 32.0), WithinRel(0.5, 1e-12));
        CHECK(bent.shift.at_mm(32.0) == 0.0);
        CHECK(bent.zones.empty());
    }
}

TEST_CASE("elastic movement and set together make the rise", "[strength][property]") {
    for (const auto& [name, design] : designs::all()) {
        for (const double rise : {2.4, 3.2, 5.0}) {
            CAPTURE(name, rise);
            const std::vector<Hold> hold{{32.0, rise}};
            const BentSpring bent = bend_by_hold(design.spring, hold, kYieldMpa);
            const double elastic = elastic_mm(design.spring, bent.loads, 32.0);
            // A section near its plastic moment multiplies the rounding of its moment by 1e7.
            CHECK_THAT(elastic + bent.shift.at_mm(32.0), WithinRel(rise, 1e-7));
            CHECK(elastic < rise);
            CHECK_FALSE(bent.zones.empty());
        }
    }
}

TEST_CASE("held in two places a spring makes both rises", "[strength][property]") {
    const auto spring = designs::heron().spring;
    const std::vector<Hold> holds{{24.0, 2.6}, {33.0, 3.8}};
    const BentSpring bent = bend_by_hold(spring, holds, kYieldMpa);
    REQUIRE(bent.loads.size() == 2);
    REQUIRE(bent.loads[0].force_n > 0.0);
    REQUIRE(bent.loads[1].force_n > 0.0);
    // Yielding ends behind the first hold, so one line tells the set at both.
    REQUIRE(bent.zones.back().to_mm < 24.0);
    for (const Hold& hold : holds) {
        CHECK_THAT(elastic_mm(spring, bent.loads, hold.x_mm) + bent.shift.at_mm(hold.x_mm),
                   WithinRel(hold.rise_mm, 1e-7));
    }
}

TEST_CASE("a hold the other one has left behind bears nothing", "[strength][property]") {
    const auto spring = designs::heron().spring;
    const std::vector<Hold> both{{24.0, 0.1}, {33.0, 4.0}}, one{{33.0, 4.0}};
    const BentSpring bent = bend_by_hold(spring, both, kYieldMpa);
    CHECK(bent.loads[0].force_n == 0.0);
    CHECK_THAT(bent.loads[1].force_n,
               WithinRel(bend_by_hold(spring, one, kYieldMpa).loads[0].force_n, 1e-10));
}

TEST_CASE("force and hold tell the same bend", "[strength][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const std::vector<Hold> hold{{32.0, 2.6}};
        const BentSpring held = bend_by_hold(design.spring, hold, 1300.0);
        const BentSpring pushed = bend_by_force(design.spring, held.loads, 1300.0);
        CHECK(pushed.shift.height_mm == held.shift.height_mm);
        CHECK(pushed.shift.slope == held.shift.slope);
    }
}

TEST_CASE("beyond its plastic moment a spring turns as a hinge without more force",
          "[strength][property]") {
    const auto spring = designs::dunlin().spring;
    const double bearable = 1.5 * kYieldMpa * spring.width_mm * 2.6 * 2.6 / 6.0 / 32.0;
    for (const double rise : {10.0, 20.0}) {
        const std::vector<Hold> hold{{32.0, rise}};
        const BentSpring bent = bend_by_hold(spring, hold, kYieldMpa);
        // Turning by 0.6 rad within a hundredth of a millimetre, the hinge's trace of stiffness
        // is worth up to 0.3 %.
        CHECK_THAT(bent.loads[0].force_n, WithinRel(bearable, 3e-3));
        CHECK(bent.loads[0].force_n > bearable);
        CHECK_FALSE(bent.zones[0].strain);
    }
    const std::vector<Load> too_much{{32.0, 1.01 * bearable}};
    CHECK_THROWS_AS(bend_by_force(spring, too_much, kYieldMpa), OutOfRange);
}

TEST_CASE("behind a clamped or yielding root nothing yields", "[strength][property]") {
    for (const auto& design : {designs::dunlin(), designs::curlew()}) {
        const std::vector<Hold> hold{{32.0, 3.0}};
        for (const PlasticZone& zone : bend_by_hold(design.spring, hold, kYieldMpa).zones) {
            CHECK(zone.from_mm >= 0.0);
        }
    }
}

TEST_CASE("a rear span that yields turns the pad about the middle pin", "[strength][property]") {
    Spring spring = designs::heron().spring;
    spring.holes.clear();
    spring.thickness = {{-34.0, 2.0}, {0.0, 2.0}, {0.0, 4.0}, {36.5, 4.0}};
    const std::vector<Hold> hold{{32.0, 4.0}};
    const BentSpring bent = bend_by_hold(spring, hold, kYieldMpa);
    REQUIRE(bent.zones.size() == 1);
    CHECK(bent.zones[0].to_mm <= 0.0);
    CHECK(bent.shift.height_mm == 0.0);
    CHECK(bent.shift.slope > 0.0);
}

TEST_CASE("what bends a spring must make sense", "[strength][abuse]") {
    const auto spring = designs::heron().spring;
    const std::vector<Load> inward{{32.0, -5.0}};
    CHECK_THROWS_AS(bend_by_force(spring, inward, kYieldMpa), InvalidInput);
    const std::vector<Hold> none, many(3, Hold{32.0, 1.0}), behind{{-5.0, 1.0}};
    CHECK_THROWS_AS(bend_by_hold(spring, none, kYieldMpa), InvalidInput);
    CHECK_THROWS_AS(bend_by_hold(spring, many, kYieldMpa), InvalidInput);
    CHECK_THROWS_AS(bend_by_hold(spring, behind, kYieldMpa), OutOfRange);
    const std::vector<Hold> hold{{32.0, 1.0}};
    CHECK_THROWS_AS(bend_by_hold(spring, hold, 0.0), InvalidInput);
}

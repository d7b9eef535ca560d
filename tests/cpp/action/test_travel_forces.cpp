#include "backspring/action/travel_forces.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("what goes with force and moment peaks as contacts found there say",
          "[turns][property]") {
    // The curves tell to 1e-11, and a search among contacts finds no more.
    constexpr double told = 1e-10;
    for (const auto& [name, design] : designs::all()) {
        const Action action = make_action(design);
        const Turns travel(action, {0.0, 180.0});
        const TravelForces forces(travel);
        REQUIRE(forces.tells());
        for (const ForceShares shares : {ForceShares{1.0, 0.0}, ForceShares{0.0, 1.0},
                                         ForceShares{-12.0, 1.0}, ForceShares{-1.0, 0.0}}) {
            CAPTURE(name, shares.per_n, shares.per_nmm);
            const auto value = [&](const Turn& turn) { return shares.of(turn.contact); };
            const Peak peak = forces.largest(shares);
            CHECK_THAT(peak.value, WithinRel(value(largest(travel, value)), told));
            const Contact there = contact_at(action.joint, peak.blade_angle_deg);
            CHECK_THAT(shares.of(there), WithinRel(peak.value, told));
        }
    }
}

TEST_CASE("force and moment of a blade tell a moment behind all that bears", "[turns]") {
    const Action action = make_action(designs::heron());
    const Turns travel(action, {0.0, 180.0});
    const TravelForces forces(travel);
    CHECK(forces.tells_at(0.0));
    CHECK(forces.tells_at(-10.0));
    CHECK_FALSE(forces.tells_at(action.joint.pad.end_mm));
}

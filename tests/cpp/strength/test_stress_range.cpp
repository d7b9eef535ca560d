#include <algorithm>

#include "backspring/check/columns.hpp"
#include "backspring/strength/stress_range.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("the range at a station spans what the belly sees on the way", "[strength][property]") {
    for (const auto& [name, design] : designs::all()) {
        const Action action = make_action(design);
        const Turns travel(action, {0.0, 180.0});
        for (const double station_mm : {-10.0, 7.0, 20.0}) {
            CAPTURE(name, station_mm);
            const StressRange range = stress_range(design.spring, travel, station_mm);
            double low_mpa = 1e9, high_mpa = -1e9;
            for (double angle = 0.0; angle <= 180.0; angle += 0.02) {
                const auto forces = loads(contact_at(action.joint, angle));
                const double belly = fibre_stress(design.spring, forces, station_mm).belly_mpa;
                low_mpa = std::min(low_mpa, belly);
                high_mpa = std::max(high_mpa, belly);
            }
            // Between two looks a cusp may rise by 1e-3 of itself.
            CHECK(range.low_mpa <= low_mpa + 1e-9);
            CHECK(range.high_mpa >= high_mpa - 1e-9);
            CHECK_THAT(range.low_mpa, WithinAbs(low_mpa, 1e-3 * high_mpa + 1e-9));
            CHECK_THAT(range.high_mpa, WithinAbs(high_mpa, 1e-3 * high_mpa + 1e-9));
        }
    }
}

TEST_CASE("at the worst station the range reaches the worst stress of the travel",
          "[strength][property]") {
    const Design design = designs::heron();
    const Action action = make_action(design);
    const Turns travel(action, {0.0, 180.0});
    const auto stress = [&](const Turn& turn) {
        return peak_stress(action, turn.contact).stress_mpa;
    };
    const PeakStress worst = peak_stress(action, largest(travel, stress).contact);
    const StressRange range = stress_range(design.spring, travel, worst.station_mm);
    CHECK_THAT(range.high_mpa, WithinRel(worst.stress_mpa, 1e-9));
    CHECK(range.low_mpa > 0.0);
    CHECK(range.low_mpa < range.high_mpa);
}

TEST_CASE("at a hole off the mid-line the range is the belly's, not the back's",
          "[strength][property]") {
    const Design design = designs::curlew();
    const Action action = make_action(design);
    const Turns travel(action, {0.0, 180.0});
    const double station_mm = 12.0;
    const Section net = section_at(design.spring, station_mm);
    REQUIRE(net.belly_mm > net.back_mm + 0.01);
    double most_nmm = 0.0;
    for (const Turn* turn : travel.all()) {
        const auto forces = loads(turn->contact);
        most_nmm = std::max(most_nmm, bending_moment_nmm(design.spring, forces, station_mm));
    }
    // The moment is greatest between two turns, by less than a percent.
    CHECK_THAT(stress_range(design.spring, travel, station_mm).high_mpa,
               WithinRel(most_nmm * net.belly_mm / net.inertia_mm4, 0.01));
}

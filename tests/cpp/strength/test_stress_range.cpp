#include <algorithm>

#include "backspring/check/columns.hpp"
#include "backspring/strength/stress_range.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("the range at a station spans what the belly sees at every step",
          "[strength][property]") {
    for (const auto& [name, design] : designs::all()) {
        const auto steps = sweep(make_action(design), 0.0, 180.0, 3.0);
        for (const double station_mm : {-10.0, 0.0, 0.4, 7.0, 20.0, 30.0}) {
            CAPTURE(name, station_mm);
            const StressRange range = stress_range(design.spring, steps, station_mm);
            double low_mpa = 1e9, high_mpa = -1e9;
            for (const Step& step : steps) {
                const Contact& contact = step.turn.contact;
                const auto forces = loads(contact);
                const double belly =
                    fibre_stress(design.spring,
                                 {forces.data(), static_cast<std::size_t>(contact.count)},
                                 station_mm)
                        .belly_mpa;
                low_mpa = std::min(low_mpa, belly);
                high_mpa = std::max(high_mpa, belly);
            }
            CHECK_THAT(range.low_mpa, WithinAbs(low_mpa, 1e-9));
            CHECK_THAT(range.high_mpa, WithinAbs(high_mpa, 1e-9));
        }
    }
}

TEST_CASE("at the worst station the range reaches the worst stress of the travel",
          "[strength][property]") {
    const Design design = designs::heron();
    const auto steps = sweep(make_action(design), 0.0, 180.0, 1.0);
    const auto worst = std::max_element(
        steps.begin(), steps.end(),
        [](const Step& a, const Step& b) { return a.peak.stress_mpa < b.peak.stress_mpa; });
    const StressRange range = stress_range(design.spring, steps, worst->peak.station_mm);
    CHECK_THAT(range.high_mpa, WithinRel(worst->peak.stress_mpa, 1e-9));
    CHECK(range.low_mpa > 0.0);
    CHECK(range.low_mpa < range.high_mpa);
}

TEST_CASE("no steps, no stress", "[strength][property]") {
    const StressRange range = stress_range(designs::heron().spring, {}, 0.0);
    CHECK(range.low_mpa == 0.0);
    CHECK(range.high_mpa == 0.0);
}

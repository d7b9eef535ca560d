#include <cmath>
#include <limits>

#include "backspring/core/error.hpp"
#include "backspring/fit/turning_test.hpp"
#include "catch.hpp"

using namespace backspring;

namespace {

/// A bushing whose radius errs, and the blade it carries.
struct Bushing {
    double eccentric_mm = 0.0, eccentric_deg = 0.0;
    double oval_mm = 0.0, oval_deg = 0.0;

    [[nodiscard]] double radius_error_mm(double deg) const {
        const double rad = std::acos(-1.0) / 180.0;
        return eccentric_mm * std::cos((deg - eccentric_deg) * rad) +
               oval_mm * std::cos(2.0 * (deg - oval_deg) * rad);
    }

    /// At a blade angle, relative to open: the bushing turns with the blade.
    [[nodiscard]] double reading_error_mm(double setting_deg, double blade_deg) const {
        return radius_error_mm(setting_deg + blade_deg) - radius_error_mm(setting_deg + 180.0);
    }
};

constexpr double kHalfStopMm = 0.11, kClosedMm = 0.17;

std::vector<TurnedReading> read(const Bushing& bushing, const std::vector<int>& quarters) {
    std::vector<TurnedReading> readings;
    for (const int quarter : quarters) {
        const double setting = 90.0 * quarter;
        readings.push_back({quarter, kHalfStopMm + bushing.reading_error_mm(setting, 90.0),
                            kClosedMm + bushing.reading_error_mm(setting, 0.0)});
    }
    return readings;
}

}  // namespace

TEST_CASE("four quarters tell what a round bushing reads, whatever is amiss of this one",
          "[turning][closed-form]") {
    for (const double eccentric_deg : {0.0, 17.0, 90.0, 201.0}) {
        for (const double oval_deg : {0.0, 30.0, 45.0, 71.0}) {
            CAPTURE(eccentric_deg, oval_deg);
            const Bushing bushing{0.02, eccentric_deg, 0.013, oval_deg};
            const TurningTest found = turning_test(read(bushing, {0, 1, 2, 3}));
            CHECK_THAT(found.half_stop_mm.value(), WithinAbs(kHalfStopMm, 1e-12));
            CHECK_THAT(found.closed_mm.value(), WithinAbs(kClosedMm, 1e-12));
            CHECK_THAT(found.eccentricity_mm.value(), WithinAbs(0.02, 1e-12));
            // What lies between the quarters shows at none of them.
            const double seen = std::abs(std::cos(2.0 * oval_deg * std::acos(-1.0) / 180.0));
            CHECK_THAT(found.oval_mm.value(), WithinAbs(0.013 * seen, 1e-12));
            CHECK_THAT(found.scatter_mm.value(), WithinAbs(0.0, 1e-12));
        }
    }
}

TEST_CASE("an oval errs twice its amplitude at the half-stop and nothing at closed",
          "[turning][closed-form]") {
    const std::vector<TurnedReading> oval = read({0.0, 0.0, 0.01, 0.0}, {0, 1, 2, 3});
    const TurningTest found = turning_test(oval);
    CHECK_THAT(found.half_stop_spread_mm, WithinAbs(2.0 * 2.0 * 0.01, 1e-12));
    CHECK_THAT(found.closed_spread_mm, WithinAbs(0.0, 1e-12));
    // An eccentric one errs by root two and by two times its amplitude.
    const TurningTest shifted = turning_test(read({0.01, 0.0, 0.0, 0.0}, {0, 1, 2, 3}));
    CHECK_THAT(shifted.closed_spread_mm, WithinAbs(2.0 * 2.0 * 0.01, 1e-12));
    const TurningTest between = turning_test(read({0.01, 45.0, 0.0, 0.0}, {0, 1, 2, 3}));
    CHECK_THAT(between.half_stop_spread_mm, WithinAbs(2.0 * std::sqrt(2.0) * 0.01, 1e-12));
}

TEST_CASE("three quarters are enough with both readings, two leave the readings unknown",
          "[turning][property]") {
    const Bushing bushing{0.02, 17.0, 0.013, 10.0};
    const TurningTest three = turning_test(read(bushing, {0, 1, 3}));
    CHECK_THAT(three.half_stop_mm.value(), WithinAbs(kHalfStopMm, 1e-12));
    CHECK_THAT(three.closed_mm.value(), WithinAbs(kClosedMm, 1e-12));
    const TurningTest opposite = turning_test(read(bushing, {0, 2}));
    // The first harmonic is gone at closed; the oval stays in the half-stop.
    CHECK_THAT(opposite.closed_mm.value(), WithinAbs(kClosedMm, 1e-12));
    CHECK_FALSE(opposite.half_stop_mm);
    CHECK_FALSE(opposite.oval_mm);
    const TurningTest one = turning_test(read(bushing, {0}));
    CHECK_FALSE(one.half_stop_mm);
    CHECK_FALSE(one.closed_mm);
    CHECK_FALSE(one.eccentricity_mm);
    CHECK_FALSE(one.scatter_mm);
}

TEST_CASE("a blade without half-stop tells eccentricity and leaves the oval unknown",
          "[turning][property]") {
    std::vector<TurnedReading> readings = read({0.02, 17.0, 0.013, 10.0}, {0, 1, 2, 3});
    for (TurnedReading& each : readings) each.half_stop_mm.reset();
    const TurningTest found = turning_test(readings);
    CHECK_THAT(found.closed_mm.value(), WithinAbs(kClosedMm, 1e-12));
    CHECK_THAT(found.eccentricity_mm.value(), WithinAbs(0.02, 1e-12));
    CHECK_FALSE(found.oval_mm);
    CHECK_FALSE(found.half_stop_mm);
}

TEST_CASE("what no bushing does is scatter", "[turning][property]") {
    std::vector<TurnedReading> readings = read({}, {0, 1, 2, 3});
    // Closed knows no second harmonic: +-0.006 in turn is scatter, over 8 readings less 5 unknowns.
    for (TurnedReading& each : readings) *each.closed_mm += each.quarter % 2 == 0 ? 0.006 : -0.006;
    const double squares = 4.0 * 0.006 * 0.006;
    CHECK_THAT(turning_test(readings).scatter_mm.value(),
               WithinAbs(std::sqrt(squares / 3.0), 1e-12));
}

TEST_CASE("a turning test that makes no sense is refused with every fault", "[turning][abuse]") {
    CHECK_THROWS_AS(turning_test({}), InvalidInput);
    CHECK_THROWS_AS(turning_test({{0, {}, {}}}), InvalidInput);
    CHECK_THROWS_AS(turning_test({{4, 0.1, 0.1}}), InvalidInput);
    CHECK_THROWS_AS(turning_test({{1, 0.1, 0.1}, {1, 0.1, 0.1}}), InvalidInput);
    const double nan = std::numeric_limits<double>::quiet_NaN();
    try {
        (void)turning_test({{0, nan, 20.0}});
        FAIL("not refused");
    } catch (const InvalidInput& error) {
        CHECK(error.faults().size() == 2);
    }
}

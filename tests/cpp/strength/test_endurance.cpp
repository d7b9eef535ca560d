#include <limits>

#include "backspring/core/error.hpp"
#include "backspring/strength/endurance.hpp"
#include "catch.hpp"

using namespace backspring;

TEST_CASE("a rougher finish leaves less, and less the harder the steel", "[strength][property]") {
    for (const double tensile_mpa : {500.0, 900.0, 1400.0, 2000.0}) {
        CAPTURE(tensile_mpa);
        CHECK(surface_factor(Finish::polished, tensile_mpa) == 1.0);
        double last = 1.0;
        for (const Finish finish :
             {Finish::ground, Finish::machined, Finish::hot_rolled, Finish::as_forged}) {
            const double factor = surface_factor(finish, tensile_mpa);
            CHECK(factor < last);
            CHECK(surface_factor(finish, tensile_mpa + 100.0) < factor);
            last = factor;
        }
    }
}

TEST_CASE("no finish is better than polished", "[strength][property]") {
    CHECK(surface_factor(Finish::ground, 150.0) == 1.0);
}

TEST_CASE("a knife spring is too small for the size factor", "[strength][closed form]") {
    // 0.808 sqrt(3 x 2.5), evaluated apart.
    const double diameter_mm = equivalent_diameter_mm(2.5, 3.0);
    CHECK_THAT(diameter_mm, WithinRel(2.212799, 1e-6));
    CHECK(size_factor(diameter_mm) == 1.0);
    CHECK(size_factor(5.9) == 1.0);
    CHECK(size_factor(7.7) < 1.0);
}

TEST_CASE("the size factor falls and its two formulas meet within 1 %", "[strength][property]") {
    double last = 1.0;
    for (double diameter_mm = 7.7; diameter_mm <= 254.0; diameter_mm += 1.3) {
        CAPTURE(diameter_mm);
        CHECK(size_factor(diameter_mm) < last);
        last = size_factor(diameter_mm);
    }
    CHECK_THAT(size_factor(51.0), WithinRel(size_factor(51.0 + 1e-9), 0.01));
    CHECK_THROWS_AS(size_factor(254.1), OutOfRange);
    CHECK_THROWS_AS(size_factor(std::numeric_limits<double>::quiet_NaN()), OutOfRange);
}

TEST_CASE("bending is what the others are measured against", "[strength][closed form]") {
    CHECK(loading_factor(Loading::bending) == 1.0);
    CHECK(loading_factor(Loading::axial) == 0.85);
    CHECK(loading_factor(Loading::torsion) == 0.59);
}

TEST_CASE("warmth does nothing at room temperature and harms from 250 C on",
          "[strength][property]") {
    CHECK(temperature_factor(20.0) == 1.0);
    // The polynomial at its own start, 70 F, evaluated apart.
    CHECK_THAT(temperature_factor(21.12), WithinAbs(0.99995, 2e-5));
    double last = temperature_factor(250.0);
    for (double temperature_c = 260.0; temperature_c <= 538.0; temperature_c += 10.0) {
        CAPTURE(temperature_c);
        CHECK(temperature_factor(temperature_c) < last);
        last = temperature_factor(temperature_c);
    }
    for (const double outside : {19.9, 538.1, std::numeric_limits<double>::quiet_NaN()}) {
        CHECK_THROWS_AS(temperature_factor(outside), OutOfRange);
    }
    CHECK_THROWS_WITH(temperature_factor(600.0),
                      ContainsSubstring("must be from 20 C to 538 C, got 600 C"));
}

TEST_CASE("half of all springs reach the typical limit, fewer a higher one",
          "[strength][property]") {
    CHECK(reliability_factor(0.5) == 1.0);
    double last = 1.0;
    for (const double reliability : {0.6, 0.9, 0.99, 0.999, 0.9999, 0.999999}) {
        CHECK(reliability_factor(reliability) < last);
        last = reliability_factor(reliability);
    }
    for (const double outside : {0.0, 0.49, 1.0, std::numeric_limits<double>::quiet_NaN()}) {
        CHECK_THROWS_AS(reliability_factor(outside), OutOfRange);
    }
}

TEST_CASE("past 1400 MPa more strength is no more endurance", "[strength][property]") {
    CHECK(design_endurance_mpa(1000.0) == 500.0);
    CHECK(design_endurance_mpa(1400.0) == 700.0);
    CHECK(design_endurance_mpa(2000.0) == 700.0);
}

TEST_CASE("the design limit lies inside the scatter of tests", "[strength][property]") {
    for (double tensile_mpa = 400.0; tensile_mpa <= 2200.0; tensile_mpa += 50.0) {
        CAPTURE(tensile_mpa);
        const Band mean = mean_endurance_mpa(tensile_mpa);
        CHECK(mean.low < design_endurance_mpa(tensile_mpa));
        CHECK(design_endurance_mpa(tensile_mpa) < mean.high);
    }
    // One standard deviation, evaluated apart.
    CHECK_THAT(mean_endurance_mpa(1000.0).low, WithinRel(436.172, 1e-9));
    CHECK_THAT(mean_endurance_mpa(1800.0).high, WithinRel(842.86, 1e-9));
}

TEST_CASE("the factors multiply", "[strength][closed form]") {
    const EnduranceFactors factors{0.9, 0.8, 1.0, 0.95, 0.897};
    CHECK_THAT(factors.product(), WithinRel(0.9 * 0.8 * 0.95 * 0.897, 1e-15));
    CHECK(EnduranceFactors{}.product() == 1.0);
}

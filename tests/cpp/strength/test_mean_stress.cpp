#include <cmath>

#include "backspring/strength/mean_stress.hpp"
#include "catch.hpp"

using namespace backspring;

namespace {

constexpr FatigueStrength kSpringSteel{500.0, 1500.0, 1300.0};
constexpr Criterion kAll[] = {Criterion::goodman, Criterion::gerber, Criterion::elliptic,
                              Criterion::swt, Criterion::walker};

StressCycle scaled(const StressCycle& cycle, double factor) {
    return {factor * cycle.amplitude_mpa, factor * cycle.mean_mpa};
}

}  // namespace

TEST_CASE("a cycle grown by its factor stands on the criterion's line", "[strength][property]") {
    for (const StressCycle& cycle : {StressCycle{172.0, 178.4}, StressCycle{300.0, 700.0},
                                     StressCycle{20.0, 900.0}, StressCycle{400.0, 1e-6}}) {
        for (const Criterion criterion : kAll) {
            CAPTURE(cycle.amplitude_mpa, cycle.mean_mpa, static_cast<int>(criterion));
            const double factor = safety_factor(criterion, cycle, kSpringSteel).value();
            CHECK_THAT(reversed_stress_mpa(criterion, scaled(cycle, factor), kSpringSteel),
                       WithinRel(kSpringSteel.reversed_mpa, 1e-11));
        }
    }
}

TEST_CASE("Gerber's factor is the textbook's", "[strength][closed form]") {
    const double a = 300.0 / 500.0, m = 700.0 / 1500.0;
    const double textbook = 0.5 / (m * m) * a * (std::sqrt(1.0 + std::pow(2.0 * m / a, 2)) - 1.0);
    CHECK_THAT(safety_factor(Criterion::gerber, {300.0, 700.0}, kSpringSteel).value(),
               WithinRel(textbook, 1e-13));
}

TEST_CASE("without mean stress the criteria agree", "[strength][property]") {
    for (const Criterion criterion : kAll) {
        CAPTURE(static_cast<int>(criterion));
        CHECK_THAT(safety_factor(criterion, {400.0, 0.0}, kSpringSteel).value(),
                   WithinRel(1.25, 1e-14));
        CHECK_THAT(reversed_stress_mpa(criterion, {400.0, 0.0}, kSpringSteel),
                   WithinRel(400.0, 1e-14));
    }
}

TEST_CASE("more amplitude or more mean never helps", "[strength][property]") {
    for (const Criterion criterion : kAll) {
        for (double mean = 0.0; mean <= 1000.0; mean += 50.0) {
            for (double amplitude = 10.0; amplitude <= 600.0; amplitude += 50.0) {
                CAPTURE(static_cast<int>(criterion), amplitude, mean);
                const auto factor = [&](double a, double m) {
                    return safety_factor(criterion, {a, m}, kSpringSteel).value();
                };
                CHECK(factor(amplitude + 5.0, mean) < factor(amplitude, mean));
                CHECK(factor(amplitude, mean + 5.0) < factor(amplitude, mean));
            }
        }
    }
}

TEST_CASE("Goodman is more cautious than Gerber", "[strength][property]") {
    for (double mean = 50.0; mean <= 1400.0; mean += 50.0) {
        CAPTURE(mean);
        CHECK(safety_factor(Criterion::goodman, {200.0, mean}, kSpringSteel).value() <
              safety_factor(Criterion::gerber, {200.0, mean}, kSpringSteel).value());
    }
}

TEST_CASE("Walker is SWT where its exponent is one half", "[strength][closed form]") {
    // 0.8818 - 0.0002 x 1909 = 0.5.
    const FatigueStrength strength{500.0, 1909.0, 1600.0};
    CHECK_THAT(walker_exponent(1909.0), WithinRel(0.5, 1e-12));
    CHECK_THAT(reversed_stress_mpa(Criterion::walker, {300.0, 700.0}, strength),
               WithinRel(reversed_stress_mpa(Criterion::swt, {300.0, 700.0}, strength), 1e-12));
    // sqrt(1000 x 300), evaluated apart.
    CHECK_THAT(reversed_stress_mpa(Criterion::swt, {300.0, 700.0}, strength),
               WithinRel(547.722558, 1e-8));
}

TEST_CASE("a compressive mean is no help and no harm", "[strength][property]") {
    for (const Criterion criterion : {Criterion::goodman, Criterion::gerber, Criterion::elliptic}) {
        CHECK(safety_factor(criterion, {400.0, -100.0}, kSpringSteel) ==
              safety_factor(criterion, {400.0, 0.0}, kSpringSteel));
    }
}

TEST_CASE("never in tension, nothing opens a crack by SWT or Walker", "[strength][property]") {
    CHECK_FALSE(safety_factor(Criterion::swt, {100.0, -300.0}, kSpringSteel));
    CHECK_FALSE(safety_factor(Criterion::walker, {100.0, -300.0}, kSpringSteel));
}

TEST_CASE("a mean beyond the tensile strength breaks at any amplitude", "[strength][property]") {
    CHECK(std::isinf(reversed_stress_mpa(Criterion::goodman, {1.0, 1500.0}, kSpringSteel)));
    CHECK(std::isinf(reversed_stress_mpa(Criterion::gerber, {1.0, 1600.0}, kSpringSteel)));
    CHECK(std::isinf(reversed_stress_mpa(Criterion::elliptic, {1.0, 1300.0}, kSpringSteel)));
}

TEST_CASE("without stress there is no factor", "[strength][property]") {
    for (const Criterion criterion : kAll) {
        CHECK_FALSE(safety_factor(criterion, {}, kSpringSteel));
        CHECK(reversed_stress_mpa(criterion, {}, kSpringSteel) == 0.0);
    }
    CHECK_FALSE(first_yield_factor({}, 1300.0));
}

TEST_CASE("yielding is asked apart, on either side of zero", "[strength][closed form]") {
    CHECK(first_yield_factor({300.0, 700.0}, 1300.0) == 1.3);
    CHECK(first_yield_factor({300.0, -700.0}, 1300.0) == 1.3);
    // Gerber lets this cycle pass although its first turn yields.
    CHECK(safety_factor(Criterion::gerber, {100.0, 1210.0}, kSpringSteel).value() > 1.0);
    CHECK(first_yield_factor({100.0, 1210.0}, 1300.0).value() < 1.0);
}

TEST_CASE("amplitude and mean of a range", "[strength][closed form]") {
    const StressCycle cycle = cycle_between(-150.0, 300.0);
    CHECK(cycle.amplitude_mpa == 225.0);
    CHECK(cycle.mean_mpa == 75.0);
    CHECK(cycle.max_mpa() == 300.0);
}

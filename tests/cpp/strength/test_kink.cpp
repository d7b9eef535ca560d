#include <cmath>
#include <limits>
#include <numbers>

#include "backspring/core/error.hpp"
#include "backspring/strength/kink.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

}  // namespace

TEST_CASE("a slight kink follows the stress of a slightly bent edge", "[strength][closed form]") {
    // Half-plane with a small slope h': s/s0 = 1 + (2/pi) int h'' ln(D/|x - u|) du; over an arc r a
    // long that is 1 + (2 a/pi)(ln(2 D/(r a)) + 1), derived. Halving r adds (2 a/pi) ln 2.
    const double angle = 1e-4;
    const double rise = kink_factor(angle, 3.0, 0.5) - kink_factor(angle, 3.0, 1.0);
    CHECK_THAT(rise, WithinRel(2.0 * angle / std::numbers::pi * std::numbers::ln2, 2e-3));
}

TEST_CASE("the exponent is that of a sharp corner", "[strength][closed form]") {
    // 1 - lambda with sin(lambda (pi + a)) = lambda sin(a), Williams 1952, solved apart.
    const auto exponent = [](double angle) {
        const double ten = kink_factor(angle, 3.0, 0.03) / kink_factor(angle, 3.0, 0.3);
        return std::log10(ten);
    };
    CHECK_THAT(exponent(3.5 * kDegree), WithinAbs(0.0374, 2e-4));
    CHECK_THAT(exponent(10.0 * kDegree), WithinAbs(0.0999, 2e-4));
    CHECK_THAT(exponent(30.0 * kDegree), WithinAbs(0.2480, 3e-3));
    CHECK_THAT(exponent(45.0 * kDegree), WithinAbs(0.3264, 8e-3));
}

TEST_CASE("a sharper kink and a smaller root carry more", "[strength][property]") {
    double last = 1.0;
    for (const double degrees : {0.5, 2.0, 5.0, 10.0, 20.0, 40.0}) {
        const double factor = kink_factor(degrees * kDegree, 3.0, 0.1);
        CAPTURE(degrees);
        CHECK(factor > last);
        CHECK(kink_factor(degrees * kDegree, 3.0, 0.05) > factor);
        CHECK_THAT(kink_factor(degrees * kDegree, 6.0, 0.2), WithinRel(factor, 1e-14));
        last = factor;
    }
}

TEST_CASE("straight, outward and gently rounded bellies have no factor", "[strength][property]") {
    CHECK(kink_factor(0.0, 3.0, 0.1) == 1.0);
    CHECK(kink_factor(-0.3, 3.0, 0.1) == 1.0);
    CHECK(kink_factor(0.3, 3.0, 30.0) == 1.0);
}

TEST_CASE("kinks outside the checked range are refused", "[strength][rules]") {
    CHECK_THROWS_WITH(kink_factor(0.1, 3.0, 0.0),
                      ContainsSubstring("root radius over thickness: must be at least 0.01"));
    CHECK_THROWS_WITH(kink_factor(0.8, 3.0, 0.1), ContainsSubstring("from -90 to 45, got 45.8"));
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS(kink_factor(nan, 3.0, 0.1), OutOfRange);
    CHECK_THROWS_AS(kink_factor(0.1, nan, 0.1), OutOfRange);
}

TEST_CASE("only what turns inward between two stretches is a kink", "[strength][property]") {
    const auto kinks = find_kinks(designs::heron().spring.thickness);
    // 3.8 to 3.1 over 7 mm, then 3.1 to 2.4 over 18, then 2.4 to 2.5 over 11.5.
    REQUIRE(kinks.size() == 2);
    CHECK(kinks[0].station_mm == 7.0);
    CHECK(kinks[0].thickness_mm == 3.1);
    CHECK_THAT(kinks[0].angle_rad, WithinRel(std::atan(0.1) - std::atan(0.7 / 18.0), 1e-12));
    CHECK(kinks[1].station_mm == 25.0);
    CHECK_THAT(kinks[1].angle_rad, WithinRel(std::atan(0.7 / 18.0) + std::atan(0.1 / 11.5), 1e-12));
}

TEST_CASE("steps and straight stretches are no kinks", "[strength][property]") {
    CHECK(find_kinks({{0.0, 3.0}, {5.0, 2.5}, {10.0, 2.0}}).empty());
    CHECK(find_kinks({{0.0, 3.0}, {5.0, 3.0}, {5.0, 2.0}, {10.0, 2.0}}).empty());
    CHECK(find_kinks({{0.0, 3.0}}).empty());
}

TEST_CASE("the belly of a curved spring turns where its mid-line does", "[strength][property]") {
    backspring::Spring spring = designs::heron().spring;
    const auto straight = find_kinks(spring);
    CHECK(straight.size() == 2);
    // A back that is straight, as the thickness alone stands for: the same belly, the same kinks.
    for (const auto& s : spring.thickness)
        spring.mid_line.push_back({s.x_mm, -0.5 * s.thickness_mm});
    const auto same = find_kinks(spring);
    REQUIRE(same.size() == 2);
    for (std::size_t i = 0; i < 2; ++i) {
        CHECK(same[i].station_mm == straight[i].station_mm);
        CHECK(same[i].thickness_mm == straight[i].thickness_mm);
        CHECK_THAT(same[i].angle_rad, WithinRel(straight[i].angle_rad, 1e-9));
    }
    spring.thickness = {{0.0, 3.0}};
    spring.mid_line = {{0.0, 0.0}, {10.0, 2.0}, {20.0, 0.0}, {20.0, 0.5}};
    const auto corners = find_kinks(spring);
    REQUIRE(corners.size() == 1);
    CHECK(corners[0].station_mm == 10.0);
    CHECK_THAT(corners[0].angle_rad, WithinRel(2.0 * std::atan(0.2), 1e-9));
}

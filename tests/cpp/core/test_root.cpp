#include <cmath>
#include <numbers>

#include "backspring/core/root.hpp"
#include "catch.hpp"

using namespace backspring;

namespace {

constexpr auto cubic = [](double x) { return x * x * x - 2.0; };

/// A jump through zero at 1/3.
constexpr auto jump = [](double x) { return x < 1.0 / 3.0 ? -1.0 : 2.0; };

}  // namespace

TEST_CASE("a root is the same from either end", "[core][closed form]") {
    const double root = std::cbrt(2.0);
    CHECK_THAT(find_root(cubic, 0.0, 3.0, -2.0, 25.0), WithinRel(root, 1e-14));
    CHECK_THAT(find_root(cubic, 3.0, 0.0, 25.0, -2.0), WithinRel(root, 1e-14));
    CHECK(find_root(cubic, 3.0, 0.0, 0.0, -2.0) == 3.0);
    CHECK(find_root(cubic, 3.0, 0.5, 25.0, 0.0) == 0.5);
}

TEST_CASE("a jump is crossed to the first number beyond it, either way", "[core][closed form]") {
    const double up = find_crossing(jump, 0.0, 1.0, -1.0, 2.0);
    CHECK(jump(up) == 2.0);
    CHECK(jump(std::nextafter(up, 0.0)) == -1.0);
    const double down = find_crossing(jump, 1.0, 0.0, 2.0, -1.0);
    CHECK(jump(down) == -1.0);
    CHECK(jump(std::nextafter(down, 1.0)) == 2.0);
    CHECK_THAT(find_crossing(cubic, 0.0, 3.0, -2.0, 25.0), WithinRel(std::cbrt(2.0), 1e-12));
}

TEST_CASE("a smooth top, a point and a top at the end are found", "[core][closed form]") {
    const auto smooth = [](double x) { return std::sin(x); };
    CHECK_THAT(find_maximum(smooth, 0.5, 3.0), WithinAbs(0.5 * std::numbers::pi, 1e-5));
    // Branches bend, as those of a travel do.
    const auto point = [](double x) {
        return x < 0.7 ? std::exp(x - 0.7) : std::exp(2.0 * (0.7 - x));
    };
    CHECK_THAT(find_maximum(point, 0.0, 2.0), WithinAbs(0.7, 1e-9));
    CHECK_THAT(find_maximum(point, 0.0, 2.0, 10), WithinAbs(0.7, 1e-2));
    const auto rising = [](double x) { return x; };
    CHECK_THAT(find_maximum(rising, 0.0, 2.0), WithinAbs(2.0, 1e-4));
}

#include <limits>

#include "backspring/core/curve.hpp"
#include "backspring/core/error.hpp"
#include "catch.hpp"

using backspring::CurvePoint;
using backspring::interpolate;
using backspring::OutOfRange;

namespace {
constexpr CurvePoint kTable[] = {{1.0, 10.0}, {2.0, 30.0}, {4.0, 20.0}};
}

TEST_CASE("rows are met exactly, first and last too", "[core][closed form]") {
    for (const CurvePoint& row : kTable) CHECK(interpolate(kTable, row.x, "y") == row.y);
}

TEST_CASE("between rows a curve is straight", "[core][closed form]") {
    CHECK(interpolate(kTable, 1.5, "y") == 20.0);
    CHECK(interpolate(kTable, 3.5, "y") == 22.5);
}

TEST_CASE("nothing is read outside a table", "[core][abuse]") {
    CHECK_THROWS_AS(interpolate(kTable, 0.999, "y"), OutOfRange);
    CHECK_THROWS_AS(interpolate(kTable, 4.001, "y"), OutOfRange);
    CHECK_THROWS_AS(interpolate(kTable, std::numeric_limits<double>::quiet_NaN(), "y"), OutOfRange);
    CHECK_THROWS_WITH(interpolate(kTable, 7.0, "tensile strength"),
                      "tensile strength: known from 1 to 4, got 7");
}

#include <algorithm>

#include "backspring/check/whole_back.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

// Young and Budynas, Roark's Formulas for Stress and Strain, 7th ed. 2002, table 8.1, case 1a: a
// cantilever under a load P at s moves P x^2 (3 s - x)/(6 E I) up to the load and
// P s^2 (3 x - s)/(6 E I) beyond it; shear adds P min(x, s)/(kappa G A).
double cantilever_mm(double force_n, double s, double x) {
    const double e = 205000.0, b = 2.3, t = 2.6, inertia = b * t * t * t / 12.0;
    const double bent = x < s ? x * x * (3.0 * s - x) : s * s * (3.0 * x - s);
    const double shear = std::min(x, s) / (e / 2.58 * b * t / 1.2);
    return force_n * (bent / (6.0 * e * inertia) + shear);
}

double above(const Contact& open, const Contact& position, double x) {
    const auto [P1, x1] = std::pair(open.touches[0].force_n, open.touches[0].x_mm);
    const auto [P2, x2] = std::pair(position.touches[0].force_n, position.touches[0].x_mm);
    return cantilever_mm(P2, x2, x) - cantilever_mm(P1, x1, x);
}

}  // namespace

TEST_CASE("a clamped strip's back lies as the handbook's two cantilevers", "[back][closed form]") {
    const Design design = designs::dunlin();
    Solution solution(design);
    const auto& [closed, half_stop, open] = solution.rests();
    const WholeBack back = whole_back(solution);
    for (const auto& [position, along] :
         {std::pair(*half_stop, *back.half_stop), std::pair(*closed, *back.closed)}) {
        REQUIRE(position.count == 1);
        double least = 0.0, greatest = 0.0;
        for (int i = 0; i <= 3650; ++i) {
            const double x = 0.01 * i;
            least = std::min(least, above(open, position, x));
            greatest = std::max(greatest, above(open, position, x));
            CHECK_THAT(above_open_mm(solution.joint(), open, position, x),
                       WithinAbs(above(open, position, x), 1e-14));
        }
        // A grid of 0.01 mm misses the top of a back so flat by far less than 1e-7 mm.
        CHECK_THAT(along.least_mm, WithinAbs(least, 1e-7));
        CHECK_THAT(along.greatest_mm, WithinAbs(greatest, 1e-7));
        CHECK_THAT(above(open, position, along.least_at_mm), WithinAbs(along.least_mm, 1e-14));
        CHECK_THAT(above(open, position, along.greatest_at_mm),
                   WithinAbs(along.greatest_mm, 1e-14));
        const double ahead = above(open, position, 33.5 + 1e-4);
        const double behind = above(open, position, 33.5 - 1e-4);
        CHECK_THAT(along.per_dial_mm, WithinAbs((ahead - behind) / 2e-4, 1e-8));
    }
}

TEST_CASE("the back at the dial is the reading", "[back][property]") {
    for (const auto& [name, design] : designs::all()) {
        INFO(name);
        Solution solution(design);
        const auto& [closed, half_stop, open] = solution.rests();
        const WholeBack back = whole_back(design);
        const double at_dial =
            above_open_mm(solution.joint(), open, *closed, design.own().fit.dial_mm);
        CHECK_THAT(at_dial, WithinAbs(*solution.readings().closed_mm, 1e-15));
        CHECK(back.closed->least_mm <= std::min(0.0, at_dial));
        CHECK(back.closed->greatest_mm >= std::max(0.0, at_dial));
        CHECK(back.half_stop.has_value() == half_stop.has_value());
    }
}

TEST_CASE("a dial set elsewhere on the Heron reads 1.8 to 4.2 thou at half-stop", "[back][demo]") {
    for (const auto& [dial_mm, thou] : {std::pair(27.0, 1.8), std::pair(36.5, 4.2)}) {
        Design design = designs::heron();
        design.own().fit.dial_mm = dial_mm;
        Solution solution(design);
        CHECK_THAT(*solution.readings().half_stop_mm / 0.0254, WithinAbs(thou, 0.05));
    }
}

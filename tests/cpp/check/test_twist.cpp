#include <algorithm>
#include <cmath>

#include "backspring/check/check.hpp"
#include "backspring/check/in_use.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/design/cases.hpp"
#include "backspring/strength/torsion.hpp"
#include "catch.hpp"
#include "several_blades.hpp"

using namespace backspring;

TEST_CASE("only blades side by side twist their spring", "[twist][blades]") {
    CHECK_FALSE(check(designs::heron()).twist);
    CHECK_FALSE(check(designs::bunting(SupportKind::two_pins)).twist);
    const Check full = check(designs::whinchat());
    REQUIRE(full.twist);
    const auto told = std::ranges::find(full.notices, NoticeCode::twist, &Notice::code);
    REQUIRE(told != full.notices.end());
    CHECK(told->names.at("side") == full.twist->side);
    CHECK(std::ranges::count(full.notices, NoticeCode::twist, &Notice::code) == 1);
}

TEST_CASE("the twist is that of the forces times half a share of the width", "[twist][blades]") {
    const Design design = designs::whinchat();
    double most = 0.0;
    for (const Design& one : cases(design)) {
        Solution solution(one);
        const auto apart = [](const Turn& turn) {
            double other = 0.0;
            for (const Touch& touch : turn.contact.others.beside) other += touch.force_n;
            return std::abs(turn.contact.force_n - other);
        };
        // Two blades, each on the middle of its half: a quarter of 4.6 mm from the middle.
        most = std::max(most, 1.15 * apart(largest(solution.travel(), apart)));
    }
    const Twist twist = check(design).twist.value();
    CHECK_THAT(twist.torque_nmm, WithinRel(most, 1e-12));
    const double angle = most * twist_rad_per_nmm(design.spring, 32.0);
    CHECK_THAT(radians(twist.angle_deg), WithinRel(angle, 1e-12));
    CHECK_THAT(twist.across_mm, WithinRel(4.6 * angle, 1e-4));
    CHECK(twist.beside.starts_with("sheep:"));
}

TEST_CASE("a tang on a shared pin bears over its share of the width", "[bearing][blades]") {
    Design design = designs::whinchat();
    const double together = bearing_pressures(design).front().line.value().peak_mpa;
    // By Hertz the peak goes with the root of force over width.
    design.blades.resize(1);
    const auto alone = bearing_pressures(design);
    CHECK(together > 0.0);
    CHECK(alone.front().bearer == bearing_pressures(designs::whinchat()).front().bearer);
    const double share = bearing_pressures(designs::whinchat()).front().force_n;
    CHECK_THAT(together / alone.front().line.value().peak_mpa,
               WithinRel(std::sqrt(2.0 * share / alone.front().force_n), 1e-9));
}

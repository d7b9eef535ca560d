#include <algorithm>
#include <cmath>

#include "backspring/check/check_two.hpp"
#include "backspring/core/angle.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

/// Heron's front half on both sides of its pins; the second blade is a small one with a round end.
TwoBlades bunting(SupportKind kind) {
    TwoBlades two{.first = designs::heron(), .second = {}};
    const bool pinned = kind == SupportKind::two_pins;
    const double span = pinned ? 18.0 : 0.0;
    two.first.spring.support = {
        .kind = kind, .rear_pin_mm = span, .root_stiffness_nmm_per_rad = 0.0};
    two.first.spring.thickness = {{-span - 33.0, 2.2}, {-span - 20.0, 2.3}, {-span, 3.4},
                                  {0.0, 3.8},          {7.0, 3.1},          {36.5, 2.5}};
    two.first.spring.holes = {{0.0, 2.0, 0.0, HoleFor::middle_pin}};
    if (pinned) two.first.spring.holes.push_back({-span, 2.0, 0.0, HoleFor::rear_pin});
    two.second.pad = {23.0, 33.0};
    two.second.tang = designs::wren().own().tang;
    two.second.tang.pivot_mm = 28.0;
    two.second.fit = {.preload_mm = 0.6, .dial_mm = 29.0};
    return two;
}

constexpr SupportKind kHolds[] = {SupportKind::clamped, SupportKind::two_pins};

double energy_nmm(const TwoBlades& two, double first_deg, double second_deg) {
    return two_contacts_at(two, first_deg, second_deg).first.energy_nmm;
}

double slope(double behind2, double behind, double ahead, double ahead2, double h_deg) {
    return (8.0 * (ahead - behind) - ahead2 + behind2) / (12.0 * radians(h_deg));
}

}  // namespace

TEST_CASE("torque on either blade is the rate of the whole spring's energy", "[two][property]") {
    constexpr double h = 2e-3;
    for (const SupportKind kind : kHolds) {
        const TwoBlades two = bunting(kind);
        for (const double a : {7.3, 31.1, 55.7, 101.9, 144.4}) {
            for (const double b : {3.1, 66.6, 133.3}) {
                CAPTURE(static_cast<int>(kind), a, b);
                const TwoContacts both = two_contacts_at(two, a, b);
                const auto first = [&](double k) { return energy_nmm(two, a + k * h, b); };
                const auto second = [&](double k) { return energy_nmm(two, a, b + k * h); };
                CHECK_THAT(both.first.torque_nmm,
                           WithinAbs(slope(first(-2), first(-1), first(1), first(2), h), 1e-4));
                CHECK_THAT(both.second.torque_nmm,
                           WithinAbs(slope(second(-2), second(-1), second(1), second(2), h), 1e-4));
            }
        }
    }
}

TEST_CASE("a spring seen from either end is the same spring", "[two][property]") {
    for (const SupportKind kind : kHolds) {
        const TwoBlades two = bunting(kind);
        TwoBlades turned{.first = second_end(two), .second = two.first.own()};
        const TwoContacts here = two_contacts_at(two, 40.0, 120.0);
        const TwoContacts there = two_contacts_at(turned, 120.0, 40.0);
        CHECK_THAT(there.second.force_n, WithinRel(here.first.force_n, 1e-11));
        CHECK_THAT(there.first.force_n, WithinRel(here.second.force_n, 1e-11));
        CHECK_THAT(there.first.energy_nmm, WithinRel(here.first.energy_nmm, 1e-11));
        const Spring back = turned_round(turned_round(two.first.spring));
        for (std::size_t i = 0; i < back.thickness.size(); ++i) {
            CHECK(back.thickness[i].x_mm == two.first.spring.thickness[i].x_mm);
            CHECK(back.thickness[i].thickness_mm == two.first.spring.thickness[i].thickness_mm);
        }
    }
}

TEST_CASE("a blade free to seat rests where its torque vanishes", "[two][property]") {
    for (const SupportKind kind : kHolds) {
        const TwoJoints joints = make_two_joints(bunting(kind));
        const auto both = contacts_at(joints, {90.0, kHalfStopReachDeg}, {0.0, kClosedReachDeg});
        REQUIRE(both);
        CHECK_THAT(both->first.torque_nmm, WithinAbs(0.0, 1e-8));
        CHECK_THAT(both->second.torque_nmm, WithinAbs(0.0, 1e-8));
        CHECK(both->first.blade_angle_deg > 90.0);
        // Its rest lies more than a degree away: within less there is none.
        CHECK_FALSE(contacts_at(joints, {90.0, 0.5}, {0.0, kClosedReachDeg}));
    }
}

TEST_CASE("peak stress is the largest along the whole spring", "[two][property]") {
    for (const SupportKind kind : kHolds) {
        const TwoBlades two = bunting(kind);
        const TwoCheck check = check_two(two);
        for (const Beside& row : check.first) {
            for (const Position& position : row.positions) {
                const Beside* met = nullptr;
                for (const Beside& other : check.second) {
                    if (other.other == position.name) met = &other;
                }
                REQUIRE(met);
                const Position* second = met->position(row.other);
                REQUIRE(second);
                const SpringAlong along =
                    spring_along_two(two, position.blade_angle_deg, second->blade_angle_deg, 0.01);
                const double largest = std::max(along.back_stress_mpa.abs().maxCoeff(),
                                                along.belly_stress_mpa.abs().maxCoeff());
                CAPTURE(static_cast<int>(kind), row.other, position.name);
                CHECK_THAT(position.peak_stress_mpa, WithinRel(largest, 5e-4));
                CHECK(position.peak_stress_mpa == second->peak_stress_mpa);
            }
        }
    }
}

TEST_CASE("a pad may end where the spring does, whatever the pins are apart", "[two][abuse]") {
    for (int i = 0; i < 200; ++i) {
        const double span = 9.0 + 0.1 * i;
        TwoBlades two = bunting(SupportKind::two_pins);
        two.first.spring.support.rear_pin_mm = span;
        two.first.spring.thickness = {{-span - 33.0, 2.2}, {36.5, 3.8}};
        two.first.spring.holes.clear();
        CAPTURE(span);
        CHECK(faults(two).empty());
    }
}

TEST_CASE("a broken rule of the second end goes by its own key", "[two][abuse]") {
    const auto keys = [](const TwoBlades& two) {
        std::string text;
        for (const Fault& fault : faults(two)) text += fault.key + " ";
        return text;
    };
    TwoBlades two = bunting(SupportKind::clamped);
    CHECK(keys(two).empty());
    two.second.tang.open_mm = -1.0;
    CHECK(keys(two) == "second.tang.open ");
    two = bunting(SupportKind::two_pins);
    two.second.pad = {23.0, 40.0};
    two.second.fit.dial_mm = std::nan("");
    CHECK(keys(two) == "second.pad second.fit.dial ");
    two = bunting(SupportKind::root_stiffness);
    CHECK_THAT(keys(two), ContainsSubstring("spring.support"));
    CHECK_THROWS_AS(check_two(two), InvalidInput);
    two = {};
    CHECK_FALSE(faults(two).empty());
}

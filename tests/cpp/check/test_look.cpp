#include <cmath>

#include "backspring/check/columns.hpp"
#include "backspring/core/error.hpp"
#include "catch.hpp"
#include "designs.hpp"
#include "several_blades.hpp"

using namespace backspring;

TEST_CASE("the spring drawn from end to end meets its contact", "[design][property]") {
    for (const auto& [name, design] : designs::all()) {
        const SpringAlong along = spring_along(design, 45.0);
        const Contact contact = contact_at(design, 45.0);
        const Joint joint = make_action(design).joint;
        CAPTURE(name);
        CHECK(along.station_mm[along.station_mm.size() - 1] == design.own().pad.end_mm);
        for (Eigen::Index i = 0; i < along.station_mm.size(); ++i) {
            const double x = along.station_mm[i];
            if (i > 0) CHECK(x > along.station_mm[i - 1]);
            CHECK(along.deflection_mm[i] == (x < 0.0 ? 0.0 : deflection_mm(joint, contact, x)));
            CHECK_THAT(along.face_mm[i], WithinAbs(4.5 - 0.9 * x / 32.0, 1e-12));
            CHECK(along.thickness_mm[i] == thickness_mm(design.spring.thickness, x));
        }
    }
}

TEST_CASE("stress along the spring reaches its peak", "[design][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Action action = make_action(design);
        const double peak = peak_stress(action, contact_at(action.joint, 52.0)).stress_mpa;
        const SpringAlong along = spring_along(design, 52.0, 0.05);
        const double drawn = std::max(along.back_stress_mpa.abs().maxCoeff(),
                                      along.belly_stress_mpa.abs().maxCoeff());
        // Stations 0.05 mm apart and places across a hole 0.02 % apart.
        CHECK_THAT(drawn, WithinRel(peak, 5e-4));
    }
}

TEST_CASE("a drawing begins at the rear pin or at the hold", "[design][property]") {
    CHECK(spring_along(designs::heron(), 0.0).station_mm[0] == -34.0);
    CHECK(spring_along(designs::dunlin(), 0.0).station_mm[0] == 0.0);
}

TEST_CASE("from either end a spring between two blades is one shape", "[design][property]") {
    for (const SupportKind kind : {SupportKind::two_pins, SupportKind::clamped}) {
        const Design design = designs::bunting(kind);
        Design turned = seen_from(design, 1);
        turned.blades[1].stands = Stand::open;
        const double rest_deg = contact_at(design, 180.0).others.angles_deg.front();
        const SpringAlong one = spring_along(design, 180.0), other = spring_along(turned, rest_deg);
        REQUIRE(one.station_mm.size() == other.station_mm.size());
        const double span_mm = design.spring.support.rear_pin_mm;
        CHECK(one.station_mm[0] == -span_mm - design.blades[1].pad.end_mm);
        const auto off = [&](const Eigen::ArrayXd& a, const Eigen::ArrayXd& b) {
            return (a - b.reverse()).abs().maxCoeff();
        };
        CHECK(off(one.station_mm, -span_mm - other.station_mm) < 1e-12);
        CHECK(off(one.thickness_mm, other.thickness_mm) < 1e-12);
        // The other blade seats to 1e-10 of a degree.
        CHECK(off(one.deflection_mm, other.deflection_mm) < 1e-9);
        CHECK(off(one.back_stress_mpa, other.back_stress_mpa) < 1e-6);
        CHECK(off(one.belly_stress_mpa, other.belly_stress_mpa) < 1e-6);
        CHECK(one.back_stress_mpa.abs().maxCoeff() > 300.0);
    }
}

TEST_CASE("kinks and hole edges are stations of their own", "[design][property]") {
    const Eigen::ArrayXd x = spring_along(designs::heron(), 0.0, 10.0).station_mm;
    for (const double place : {-33.0, -4.0, -1.0, 0.0, 1.0, 7.0, 25.0}) {
        CHECK(((x - place).abs() < 1e-12).any());
    }
}

TEST_CASE("a sweep of a design has the columns of its angles", "[design][property]") {
    const Sweep table = sweep(designs::heron(), 1.0);
    REQUIRE(table.blade_angle_deg.size() == 181);
    CHECK(table.force_n[45] == contact_at(designs::heron(), 45.0).force_n);
    CHECK(table.peak_stress_mpa.size() == 181);
}

TEST_CASE("a broken design or angle is refused by every look", "[design][abuse]") {
    Design design = designs::heron();
    CHECK_THROWS_AS(contact_at(design, 300.0), OutOfRange);
    CHECK_THROWS_AS(sweep(design, 1.0, -50.0, 0.0), OutOfRange);
    CHECK_THROWS_AS(spring_along(design, 0.0, 0.0), InvalidInput);
    CHECK_THROWS_AS(spring_along(design, 0.0, std::nan("")), InvalidInput);
    design.spring.thickness.clear();
    CHECK_THROWS_AS(contact_at(design, 0.0), InvalidInput);
    CHECK_THROWS_AS(sweep(design), InvalidInput);
    CHECK_THROWS_AS(spring_along(design, 0.0), InvalidInput);
}

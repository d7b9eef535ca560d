#include <algorithm>
#include <cmath>
#include <numbers>

#include "backspring/check/check.hpp"
#include "backspring/check/columns.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

/// Hardly any preload, and a closed face as high as the open one: nothing bends or turns.
Design straight() {
    Design design = designs::heron();
    design.own().tang.closed_mm = design.own().tang.open_mm;
    design.own().fit.preload_mm = 1e-5;
    return design;
}

ClosedBlade closed_of(const Design& design) { return check(design).closed_blade; }

}  // namespace

TEST_CASE("of a blade that is not drawn nothing is told", "[closed blade][property]") {
    const ClosedBlade found = closed_of(designs::heron());
    CHECK_FALSE(found.tip_mm);
    CHECK_FALSE(found.edge_gap_mm);
    CHECK_FALSE(found.edge_gap_at_mm);
}

TEST_CASE("the tip's place is the nearest thing that is known", "[closed blade][property]") {
    Design design = designs::heron();
    CHECK_FALSE(blade_tip(design));
    design.own().blade.length_mm = 80.0;
    CHECK_THAT(blade_tip(design)->u_mm, WithinAbs(80.0 - 4.62, 1e-12));
    design.own().blade.edge = {{9.0, -4.0}, {76.0, 1.0}, {60.0, -4.0}};
    CHECK(blade_tip(design)->u_mm == 76.0);
    design.own().blade.tip = BladePoint{74.0, 2.0};
    CHECK(blade_tip(design)->w_mm == 2.0);
}

TEST_CASE("a place of the blade rises as it turns out", "[closed blade][closed form]") {
    CHECK_THAT(height_in_handle_mm({70.0, 3.0}, 30.0),
               WithinRel(35.0 + 3.0 * (std::cos(std::numbers::pi / 6.0) - 1.0), 1e-12));
    CHECK(height_in_handle_mm({70.0, 3.0}, 0.0) == 0.0);
}

TEST_CASE("nothing bent, tip and edge are lines against a line", "[closed blade][closed form]") {
    Design design = straight();
    design.own().blade.edge = {{9.0, -4.0}, {20.0, -3.5}};
    design.own().blade.tip = BladePoint{60.0, 1.0};
    design.own().blade.well_mm = 7.0;
    const ClosedBlade found = closed_of(design);
    CHECK_THAT(*found.edge_gap_mm, WithinAbs(4.5 - 4.0, 1e-4));
    CHECK_THAT(*found.edge_gap_at_mm, WithinAbs(32.0 - 9.0, 1e-3));
    CHECK_THAT(*found.tip_mm, WithinAbs(4.5 + 1.0 - 7.0, 1e-4));
}

TEST_CASE("the least gap is that of a fine look along the bent belly", "[closed blade][oracle]") {
    for (Design design : {designs::heron(), designs::plover(), designs::curlew()}) {
        design.own().blade.edge = {{6.0, -3.9}, {25.0, -3.0}, {70.0, 1.0}};
        const Check result = check(design);
        const double angle = result.position("closed")->blade_angle_deg;
        const SpringAlong along = spring_along(design, angle, 0.01);
        const double turn = angle * std::numbers::pi / 180.0;
        double least = 1e9;
        for (std::size_t part = 0; part < 2; ++part) {
            for (int i = 0; i <= 4000; ++i) {
                const BladePoint a = design.own().blade.edge[part],
                                 b = design.own().blade.edge[part + 1];
                const double u = a.u_mm + (b.u_mm - a.u_mm) * i / 4000.0;
                const double w = a.w_mm + (b.w_mm - a.w_mm) * i / 4000.0;
                const double x = 32.0 - u * std::cos(turn) + w * std::sin(turn);
                const double y = -u * std::sin(turn) - w * std::cos(turn);
                const auto& at = along.station_mm;
                if (x < at[0] || x > at[at.size() - 1]) continue;
                const auto k = std::lower_bound(at.begin(), at.end(), x) - at.begin();
                least = std::min(least, along.face_mm[k] + along.deflection_mm[k] - y);
            }
        }
        CHECK_THAT(*result.closed_blade.edge_gap_mm, WithinAbs(least, 1e-3));
    }
}

TEST_CASE("a deeper well takes the tip in by as much", "[closed blade][closed form]") {
    Design design = designs::plover();
    design.own().blade.length_mm = 80.0;
    design.own().blade.well_mm = 5.0;
    const double shallow = *closed_of(design).tip_mm;
    design.own().blade.well_mm = 6.5;
    CHECK_THAT(shallow - *closed_of(design).tip_mm, WithinAbs(1.5, 1e-12));
}

TEST_CASE("a drawn edge has two corners, a well a tip", "[closed blade][abuse]") {
    Design design = designs::heron();
    design.own().blade.edge = {{9.0, -4.0}};
    CHECK(faults(design).size() == 1);
    design.own().blade.edge.clear();
    design.own().blade.well_mm = 9.0;
    CHECK(faults(design).size() == 1);
}

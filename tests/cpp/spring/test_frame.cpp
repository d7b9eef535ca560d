#include "backspring/spring/frame.hpp"
#include "backspring/spring/root_give.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

Frame brass(double height_mm) {
    Frame frame;
    frame.liner_thickness_mm = 1.0;
    frame.liner_height_mm = height_mm;
    return frame;
}

FramePins pins_at(double rear_mm, double pivot_mm, double diameter_mm) {
    return {.middle = {0.0, diameter_mm, 2.0},
            .rear = {-rear_mm, diameter_mm, 2.0},
            .pivot = {pivot_mm, diameter_mm, 6.0},
            .far_pivot = {}};
}

}  // namespace

TEST_CASE("pins without holes leave a beam on two supports", "[frame][closed-form]") {
    // Timoshenko's beam with its load in the middle: F L^3/(48 E I) + F L/(4 kappa G A).
    const double length = 60.0, inertia = 2.0 * 12.0 * 12.0 * 12.0 / 12.0, area = 2.0 * 12.0;
    const double shear = 110000.0 / (2.0 * 1.31);
    const FrameGive give = make_frame_give(brass(12.0), pins_at(30.0, 30.0, 0.0));
    CHECK_THAT(give.middle_mm_per_n, WithinRel(length * length * length / (48.0 * 110e3 * inertia) +
                                                   length / (4.0 * 5.0 / 6.0 * shear * area),
                                               1e-12));
    CHECK(give.rear_mm_per_n == 0.0);
    CHECK(give.pivot_mm_per_n == 0.0);
}

TEST_CASE("liners bend as their metal does", "[frame][closed-form]") {
    // Without holes, F L^3/(48 E I) + F L/(4 kappa G A); E from 110 GPa of brass and titanium to
    // 205 GPa of steel (common handbook values, from memory).
    const double length = 60.0, inertia = 2.0 * 12.0 * 12.0 * 12.0 / 12.0, area = 2.0 * 12.0;
    struct Row {
        LinerMetal metal;
        double modulus_mpa, poisson;
    };
    for (const Row& row : {Row{LinerMetal::brass, 110e3, 0.31},
                           {LinerMetal::titanium, 110e3, 0.32},
                           {LinerMetal::nickel_silver, 120e3, 0.32},
                           {LinerMetal::stainless, 190e3, 0.28},
                           {LinerMetal::steel, 205e3, 0.29}}) {
        CAPTURE(row.modulus_mpa, row.poisson);
        Frame frame = brass(12.0);
        frame.liner_metal = row.metal;
        const double shear = row.modulus_mpa / (2.0 * (1.0 + row.poisson));
        const FrameGive give = make_frame_give(frame, pins_at(30.0, 30.0, 0.0));
        CHECK_THAT(give.middle_mm_per_n,
                   WithinRel(length * length * length / (48.0 * row.modulus_mpa * inertia) +
                                 length / (4.0 * 5.0 / 6.0 * shear * area),
                             1e-12));
    }
}

TEST_CASE("scales count as their modulus does", "[frame][property]") {
    Frame thick = brass(12.0), scaled = brass(12.0);
    thick.liner_thickness_mm = 1.5;
    scaled.scale_thickness_mm = 5.0;
    scaled.scale_modulus_mpa = 11000.0;
    const FramePins pins = pins_at(34.0, 32.0, 0.0);
    CHECK_THAT(make_frame_give(scaled, pins).middle_mm_per_n,
               WithinRel(make_frame_give(thick, pins).middle_mm_per_n, 1e-12));
}

TEST_CASE("the liners' edge moves alike both ways and is smooth", "[frame][property]") {
    const LinerBeam beam = make_frame_give(brass(12.0), pins_at(34.0, 32.0, 0.0)).liners;
    CHECK_THAT(edge_give(beam, 12.0, -5.0).mm_per_n,
               WithinRel(edge_give(beam, -5.0, 12.0).mm_per_n, 1e-12));
    for (const double x : {-36.0, -20.0, 7.0, 31.0, 33.5}) {
        CAPTURE(x);
        const double h = 1e-3;
        const double rate =
            (edge_give(beam, x + h, 0.0).mm_per_n - edge_give(beam, x - h, 0.0).mm_per_n) /
            (2.0 * h);
        CHECK_THAT(edge_give(beam, x, 0.0).rad_per_n, WithinRel(rate, 1e-6));
    }
    CHECK(edge_give(beam, -34.0, 0.0).mm_per_n == 0.0);
    CHECK(edge_give(beam, 32.0, 0.0).mm_per_n == 0.0);
}

TEST_CASE("each pin that gives adds a rank-one term", "[frame][closed-form]") {
    const Flexibility held = make_flexibility(designs::heron().spring);
    const FrameGive give{.middle_mm_per_n = 2e-4,
                         .rear_mm_per_n = 3e-5,
                         .cross_mm_per_n = 1e-5,
                         .pivot_mm_per_n = 4e-5,
                         .far_pivot_mm_per_n = 0.0,
                         .liners = {}};
    const Flexibility freed = with_root_give(held, root_give(give, 34.0));
    for (const auto& [x, xi] : {std::pair{32.0, 32.0}, {20.0, 33.0}, {36.0, 27.5}}) {
        // Forces on middle and rear pin for a unit force at a station.
        const double m = 1.0 + x / 34.0, r = -x / 34.0, mi = 1.0 + xi / 34.0, ri = -xi / 34.0;
        const double added = 2e-4 * m * mi + 3e-5 * r * ri + 1e-5 * (m * ri + r * mi) + 4e-5;
        CHECK_THAT(deflection_per_force(freed, x, xi) - deflection_per_force(held, x, xi),
                   WithinRel(added, 1e-9));
        const double turned = (2e-4 * mi - 3e-5 * ri + 1e-5 * (ri - mi)) / 34.0;
        CHECK_THAT(slope_per_force(freed, x, xi) - slope_per_force(held, x, xi),
                   WithinRel(turned, 1e-9));
    }
}

TEST_CASE("what passes from end to end is the same both ways", "[frame][property]") {
    const FrameGive give{.middle_mm_per_n = 2e-4,
                         .rear_mm_per_n = 3e-4,
                         .cross_mm_per_n = 1.7e-4,
                         .pivot_mm_per_n = 4e-5,
                         .far_pivot_mm_per_n = 5e-5,
                         .liners = {}};
    const double span = 18.0, x = 30.0, z = 25.0;
    const RootCross cross = root_cross(give, span);
    const double m = 1.0 + x / span, r = -x / span, far_m = -z / span, far_r = 1.0 + z / span;
    const double expected = 2e-4 * m * far_m + 3e-4 * r * far_r + 1.7e-4 * (m * far_r + r * far_m);
    CHECK_THAT(cross.lift_mm_per_n + x * cross.turn_rad_per_n + z * cross.lift_mm_per_nmm +
                   x * z * cross.turn_rad_per_nmm,
               WithinRel(expected, 1e-12));
}

TEST_CASE("a measured seat stands for the middle pin", "[frame][closed-form]") {
    Frame frame;
    frame.seat_mm_per_n = 2e-4;
    const FrameGive give = make_frame_give(frame, pins_at(34.0, 32.0, 2.0));
    CHECK(seat_mm_per_n(give, 34.0, 32.0) == 2e-4);
    CHECK_THAT(edge_give(give.liners, 0.0, 0.0).mm_per_n, WithinRel(2e-4, 1e-12));
    CHECK(edge_give(give.liners, 32.0, 0.0).mm_per_n == 0.0);
}

TEST_CASE("a pin beds itself into its hole by the fitted numbers", "[frame][closed-form]") {
    // E 110 GPa, both liners 2 mm: e = 2 of H = 12 for the spring's pins and 6 for the pivot at
    // mid-height, r = 1. The middle pin presses towards its edge, the rear one and the pivot do
    // not.
    const FrameGive give = make_frame_give(brass(12.0), pins_at(34.0, 32.0, 2.0));
    const auto bedded = [&](double all_mm_per_n, double x_mm) {
        return (all_mm_per_n - edge_give(give.liners, x_mm, x_mm).mm_per_n) * 110e3 * 2.0;
    };
    const double inward = 0.82 / 3.0, towards = 2.33 / (2.0 - 0.515) * (1.0 - 1.0 / 81.0);
    CHECK_THAT(bedded(give.middle_mm_per_n, 0.0), WithinRel(inward + towards, 1e-9));
    CHECK_THAT(bedded(give.rear_mm_per_n, -34.0), WithinRel(inward, 1e-9));
    CHECK_THAT(give.pivot_mm_per_n * 110e3 * 2.0, WithinRel(0.82, 1e-12));
}

TEST_CASE("a seat gives by the work of three balanced forces", "[frame][closed-form]") {
    // 1 N on the middle pin, 0.6 N on the rear one 18 mm behind, 0.4 N on the pivot 27 mm ahead:
    // 2e-4 - 2 (0.6) 1e-5 + 0.36 (3e-5) + 0.16 (4e-5).
    const FrameGive give{.middle_mm_per_n = 2e-4,
                         .rear_mm_per_n = 3e-5,
                         .cross_mm_per_n = 1e-5,
                         .pivot_mm_per_n = 4e-5,
                         .far_pivot_mm_per_n = 0.0,
                         .liners = {}};
    CHECK_THAT(seat_mm_per_n(give, 18.0, 27.0), WithinRel(2.052e-4, 1e-12));
}

#include "backspring/design/joint_of.hpp"
#include "backspring/design/steel_ends.hpp"
#include "catch.hpp"
#include "several_blades.hpp"

using namespace backspring;

TEST_CASE("a tang bears over the narrower edge of its pad, shared on one pin",
          "[design][closed form]") {
    // From 2.15 mm at 23 mm to 2.25 mm at 36.5 mm: 2.15 + 0.1 x 4/13.5 at the pad's rear edge.
    const double narrow = 2.15 + 0.1 * 4.0 / 13.5;
    Design design = designs::twite();
    CHECK_THAT(bearing_width_mm(design), WithinRel(narrow, 1e-12));
    Blade second = design.own();
    second.name = "second";
    design.blades.push_back(second);
    CHECK_THAT(bearing_width_mm(design), WithinRel(0.5 * narrow, 1e-12));
}

TEST_CASE("even steel ends where the pads do", "[design][blades]") {
    Design design = designs::bunting(SupportKind::two_pins);
    design.spring.thickness = {{0.0, 3.0}};
    CHECK(steel_ends(design).rear_mm == -18.0 - 33.0);
    CHECK(steel_ends(design).front_mm == 36.5);
    CHECK(belly_ends(design).rear_mm == -18.0 - 23.0);
    CHECK(belly_ends(design).front_mm == 27.0);
}

TEST_CASE("a hole nearer the back holds its pin nearer the liners' edge", "[design][frame]") {
    Design design = designs::heron();
    design.spring.holes[1].offset_mm = 0.4;
    design.frame.liner_thickness_mm = 1.0;
    design.frame.liner_height_mm = 12.0;
    const Profile& profile = design.spring.thickness;
    const FrameGive by_hand =
        make_frame_give(design.frame, {.middle = {0.0, 2.0, 0.5 * 3.8 - 0.4},
                                       .rear = {-34.0, 2.0, 0.5 * thickness_mm(profile, -34.0)},
                                       .pivot = {32.0, 3.2, 4.5 + thickness_mm(profile, 32.0)},
                                       .far_pivot = {}});
    const FrameGive give = frame_of(design).value().give;
    CHECK_THAT(give.middle_mm_per_n, WithinRel(by_hand.middle_mm_per_n, 1e-12));
    CHECK_THAT(give.rear_mm_per_n, WithinRel(by_hand.rear_mm_per_n, 1e-12));
    CHECK_THAT(give.pivot_mm_per_n, WithinRel(by_hand.pivot_mm_per_n, 1e-12));
}

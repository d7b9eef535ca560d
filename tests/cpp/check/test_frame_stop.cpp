#include "backspring/design/joint_of.hpp"
#include "backspring/spring/axial_push.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("a push along the spring moves pins that give by its moment alone",
          "[frame][closed-form]") {
    // Castigliano: at x the moment M of the push lifts by M (turn per force + x turn per moment).
    Design design = designs::heron();
    const Flexibility rigid = make_flexibility(design);
    design.frame.liner_thickness_mm = 1.0;
    design.frame.liner_height_mm = 12.0;
    const Flexibility freed = make_flexibility(design);
    const RootGive give = root_give(frame_of(design)->give, 34.0);
    const auto lever = [](double x) { return 1.5 - 0.02 * x; };
    const AxialPush still = make_axial_push(design.spring, rigid, 36.5, lever);
    const AxialPush moved = make_axial_push(design.spring, freed, 36.5, lever);
    for (const double x : {5.0, 20.0, 33.5}) {
        const double added =
            push_compliance(freed, moved, x).mm_per_n - push_compliance(rigid, still, x).mm_per_n;
        CHECK_THAT(added,
                   WithinRel(1.5 * (give.turn_rad_per_n + x * give.turn_per_moment_per_nmm), 1e-8));
    }
    CHECK_THAT(moved.own_mm_per_n - still.own_mm_per_n,
               WithinRel(1.5 * 1.5 * give.turn_per_moment_per_nmm, 1e-8));
}

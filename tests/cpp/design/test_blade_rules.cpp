#include <algorithm>
#include <cmath>
#include <functional>
#include <string>

#include "backspring/tang/outline.hpp"
#include "catch.hpp"
#include "several_blades.hpp"
#include "told.hpp"

using namespace backspring;

namespace {

/// Room for the tip of one of two blades that face each other, from its own pivot.
double room_mm(const Design& design) {
    return 32.0 + 18.0 + 28.0 - swept_radius_mm(make_outline(design.blades[1].tang, 0.0));
}

}  // namespace

TEST_CASE("a blade ends before the tang at the other end, however long it is drawn",
          "[design][blades][abuse]") {
    const Design design = designs::bunting(SupportKind::two_pins);
    const double room = room_mm(design), hair = 1e-9;
    const auto with_length = [&](double reach) {
        Design longer = design;
        longer.own().blade.length_mm = reach + rear_reach_mm(design.own().tang);
        return told(longer);
    };
    const auto with_tip = [&](double u, double w) {
        Design longer = design;
        longer.own().blade.tip = BladePoint{.u_mm = u, .w_mm = w};
        return told(longer);
    };
    CHECK(with_length(room - hair).empty());
    CHECK_THAT(with_length(room + hair),
               ContainsSubstring("blade.length: strikes the tang of the blade at the other end"));
    CHECK(with_tip(0.8 * (room - hair), 0.6 * (room - hair)).empty());
    CHECK_THAT(with_tip(0.8 * (room + hair), 0.6 * (room + hair)),
               ContainsSubstring("blade.tip: strikes the tang of the blade at the other end"));
}

TEST_CASE("the blade at the rear is told by its own key", "[design][blades][abuse]") {
    Design design = designs::bunting(SupportKind::clamped);
    design.blades[1].blade.length_mm = 80.0;
    CHECK_THAT(told(design), ContainsSubstring("blades.pen.blade.length: strikes the tang"));
    design.blades[1].blade.tip = BladePoint{.u_mm = 30.0, .w_mm = 0.0};
    CHECK(told(design).empty());
}

TEST_CASE("what several blades may not be is told", "[design][blades][abuse]") {
    struct Row {
        const char* told;
        std::function<void(Design&)> breaks;
    };
    const Row rows[] = {
        {"blade.name: must be of letters, digits, - and _, got \"\"",
         [](Design& d) { d.own().name = ""; }},
        {"blades.a pen.name: must be of letters, digits, - and _, got \"a pen\"",
         [](Design& d) { d.blades[1].name = "a pen"; }},
        {"blades.main.name: must differ from every other blade's name, got \"main\"",
         [](Design& d) { d.blades[1].name = d.own().name = "main"; }},
        {"blades: must be at most 4 at one end of the spring, got 5",
         [](Design& d) {
             const Blade pen = d.blades[1];
             for (const char* name : {"b", "c", "d", "e"}) {
                 d.blades.push_back(pen);
                 d.blades.back().name = name;
             }
         }},
        {"spring.support: must be by two pins or by a middle pin alone",
         [](Design& d) {
             d.spring.support = {.kind = SupportKind::root_stiffness,
                                 .rear_pin_mm = 0.0,
                                 .root_stiffness_nmm_per_rad = 1e5};
         }},
    };
    for (const Row& row : rows) {
        CAPTURE(row.told);
        Design design = designs::bunting(SupportKind::two_pins);
        row.breaks(design);
        CHECK_THAT(told(design), ContainsSubstring(row.told));
    }
}

TEST_CASE("tangs on pivots of their own have pads of their own", "[design][blades][abuse]") {
    Design design = designs::whinchat();
    design.blades[1].tang.pivot_mm = 26.0;
    design.blades[1].pad = {20.0, 27.0};
    design.blades[1].fit.dial_mm = 26.0;
    CHECK(told(design).find("must not overlap the pad") == std::string::npos);
    design.blades[1].pad.end_mm = 27.001;
    CHECK_THAT(told(design),
               ContainsSubstring("blades.sheep.pad: must not overlap the pad of another blade on a "
                                 "pivot of its own, from 27 mm to 36.5 mm"));
}

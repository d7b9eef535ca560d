#include <algorithm>
#include <cmath>

#include "backspring/action/end_stop.hpp"
#include "backspring/action/sweep.hpp"
#include "backspring/design/joint_of.hpp"
#include "backspring/spring/section.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

// The same stress at close stations, of each section's own: a maximum lies within 1e-3 mm of one.
// Across holes the probe has fewer, and says that it is then within 0.02 %.
TEST_CASE("an open blade's stress on its stop is looked for all along the spring", "[stop]") {
    for (const StopPlace place : {StopPlace::back, StopPlace::middle, StopPlace::belly}) {
        Design design = designs::heron();
        design.own().fit.stop = {.place = place, .friction = 0.1};
        for (const double whole : {0.0, 1.0}) {
            if (whole == 1.0) design.spring.holes.clear();
            const Joint joint = make_joint(design);
            const Contact open = open_on_stop(joint);
            const EndStop& stop = *joint.stop;
            const double push = open.stop.force_n;
            double most = 0.0;
            for (int i = 0; i < 36500; ++i) {
                const double x = 1e-3 * i;
                double moment = push * (stop.push.lever_mm(x) +
                                        stop.across() * std::max(joint.pad.end_mm - x, 0.0));
                for (const Touch& touch : open.all()) {
                    moment += touch.force_n * std::max(touch.x_mm - x, 0.0);
                }
                const Section section = section_at(design.spring, x);
                most = std::max(most, std::abs(moment) * outer_stress_per_moment(section) +
                                          push / section.area_mm2);
            }
            const Action action =
                make_action(design.spring, joint, make_stress_probe(design), design.friction);
            CAPTURE(static_cast<int>(place), whole);
            CHECK_THAT(peak_stress(action, open).stress_mpa,
                       WithinRel(most, whole == 1.0 ? 1e-7 : 2e-4));
        }
    }
}

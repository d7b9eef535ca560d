#include <cmath>

#include "backspring/action/unloaded_readings.hpp"
#include "backspring/check/closed_blade.hpp"
#include "backspring/check/solution.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/fit/fit_model.hpp"
#include "backspring/fit/levers.hpp"
#include "backspring/grind/grind.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

constexpr double kReachMm = 94.42;

/// A large pattern whose kick carries the closed blade; the dial stands at the pivot.
Design carried() {
    Design design = designs::plover();
    design.own().blade.tip = BladePoint{.u_mm = kReachMm, .w_mm = 0.0};
    design.own().fit.dial_mm = design.own().tang.pivot_mm;
    return design;
}

const Lever& row(const std::vector<Lever>& rows, LeverFace face) {
    for (const Lever& each : rows) {
        if (each.face == face) return each;
    }
    throw std::runtime_error("no such row");
}

/// Reading and tip of a rigid spring that turns on the middle pin.
struct Rigid {
    double reading_mm;
    double tip_mm;
};

Rigid rigid(const Design& design) {
    Solution solution(design);
    return {
        *solution.unloaded_readings().closed_mm,
        height_in_handle_mm(*blade_tip(design), solution.unloaded_rests().closed->blade_angle_deg)};
}

}  // namespace

TEST_CASE("a rigid spring on two contacts follows the lever of each", "[levers][closed form]") {
    // Rear contact at -r, nose at +k from the pivot: the spring turns on the middle pin, the blade
    // on its pivot, and both must touch at both. Off the kick the needle at the pivot falls by
    // r/(k + r), off the rear edge by k/(k + r). The tip sinks by B/(k + r) where the spring only
    // moves out; as it turns too, by (1 + r/a) of that off the kick, (1 - k/a) off the face.
    const Design design = carried();
    Solution solution(design);
    const auto touches = solution.unloaded_rests().closed->all();
    REQUIRE(solution.rests().closed->count == 2);
    const double a = design.own().tang.pivot_mm;
    const double k = design.own().tang.kick->distance_mm, r = *design.own().tang.half_stop_mm - 0.7;
    const double hair = 0.002;
    const auto rate = [&](const FaceDepths& depths) {
        FaceDepths on = depths;
        on.closed_mm = -on.closed_mm;
        on.kick_mm = -on.kick_mm;
        const Rigid off = rigid(take_off(design, depths)), put = rigid(take_off(design, on));
        return Rigid{(off.reading_mm - put.reading_mm) / (2.0 * hair),
                     (off.tip_mm - put.tip_mm) / (2.0 * hair)};
    };
    const Rigid kick = rate({.kick_mm = hair}), face = rate({.closed_mm = hair});
    // The blade is turned by about a degree, which moves both contacts by a tenth of a mm.
    CHECK_THAT(kick.reading_mm, WithinRel(-r / (k + r), 0.03));
    CHECK_THAT(face.reading_mm, WithinRel(-k / (k + r), 0.03));
    CHECK_THAT(kick.tip_mm, WithinRel(-kReachMm / (k + r) * (1.0 + r / a), 0.03));
    CHECK_THAT(face.tip_mm, WithinRel(kReachMm / (k + r) * (1.0 - k / a), 0.03));
    CHECK(touches.size() <= 2);
}

TEST_CASE("a lever is the slope of what grinding gives", "[levers][property]") {
    for (Design design : {designs::heron(), carried(), designs::wren(), designs::curlew()}) {
        design.own().blade.length_mm = 90.0;
        design.own().blade.tip = blade_tip(design);
        const std::vector<Lever> rows = levers(design);
        const double hair = 0.002;
        const auto seen = [&](const Design& ground) {
            return fit_readings(ground).loaded.closed_mm.value();
        };
        const double start = seen(design);
        const Lever& closed = row(rows, LeverFace::closed);
        CHECK_THAT(seen(take_off(design, {.closed_mm = hair})) - start,
                   WithinAbs(*closed.closed_mm * hair / kLeverDepthMm, 2e-6));
        const Lever& back = row(rows, LeverFace::back);
        const Cut cut{.face = GrindFace::back, .depth_mm = hair, .region = std::nullopt};
        CHECK_THAT(seen(grind(design, cut)) - start,
                   WithinAbs(*back.closed_mm * hair / kLeverDepthMm, 2e-6));
        CHECK(*back.peak_pull_n < 0.0);
    }
}

TEST_CASE("of steel that is all but gone a lever is told from what is left", "[levers][property]") {
    // A strip whose belly opens its hole after so much; a step of a lever is 0.005 mm.
    const auto strip = [](double left_mm) {
        Design design = designs::dunlin();
        design.spring.holes = {{0.0, 2.6 - 2.0 * left_mm, 0.0, HoleFor::middle_pin}};
        REQUIRE(faults(design).empty());
        return design;
    };
    const auto pull_n = [](const Design& design, double depth_mm) {
        const Cut cut{.face = GrindFace::belly, .depth_mm = depth_mm, .region = std::nullopt};
        const Design ground = grind(design, cut);
        Solution solution(ground);
        return peak_pull_n(solution).value();
    };
    const auto lever_n = [](const Design& design) {
        return row(levers(design), LeverFace::belly).peak_pull_n;
    };
    const double hair = 0.005;
    const Design two = strip(0.0125), one = strip(0.0075), none = strip(0.003);
    // The parabola through three depths, the line through two.
    const double curved =
        (4.0 * pull_n(two, hair) - pull_n(two, 2.0 * hair) - 3.0 * pull_n(two, 0.0)) / (2.0 * hair);
    CHECK_THAT(lever_n(two).value(), WithinRel(kLeverDepthMm * curved, 1e-9));
    const double straight = (pull_n(one, hair) - pull_n(one, 0.0)) / hair;
    CHECK_THAT(lever_n(one).value(), WithinRel(kLeverDepthMm * straight, 1e-9));
    CHECK_FALSE(lever_n(none));
}

TEST_CASE("the table has the faces that a knife has", "[levers][property]") {
    CHECK(levers(designs::heron()).size() == 5);
    CHECK(levers(designs::plover()).size() == 6);
    CHECK(levers(designs::wren()).size() == 4);
    for (const Lever& each : levers(designs::wren())) {
        CHECK_FALSE(each.half_stop_mm);
        CHECK_FALSE(each.tip_mm);
        CHECK_FALSE(each.edge_gap_mm);
        CHECK_FALSE(name_of(each.face).empty());
    }
}

TEST_CASE("kick and closed face move the tip against each other, per depth", "[levers][property]") {
    const std::vector<Lever> rows = levers(carried());
    CHECK(*row(rows, LeverFace::kick).tip_mm < -0.3);
    CHECK(*row(rows, LeverFace::closed).tip_mm > 0.3);
    CHECK(std::abs(*row(rows, LeverFace::half_stop).tip_mm) < 0.1);
}

TEST_CASE("a bad design has no levers", "[levers][abuse]") {
    Design design = designs::heron();
    design.spring.width_mm = -1.0;
    CHECK_THROWS_AS(levers(design), InvalidInput);
}

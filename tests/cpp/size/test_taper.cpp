#include <algorithm>
#include <cmath>

#include "../sensitivity/figures_of.hpp"
#include "backspring/check/columns.hpp"
#include "backspring/core/error.hpp"
#include "backspring/size/size.hpp"
#include "backspring/size/taper.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("a taper gives its pull, and less stress than scaling the profile", "[shop][property]") {
    const auto& [name, design] = GENERATE(from_range(designs::all()));
    CAPTURE(name);
    const Taper taper = propose_taper(design, 10.0, 1.2);
    auto checked = figures_of(taper.design);
    CHECK_THAT(checked["peak_pull_n"], WithinRel(10.0, 1e-6));
    CHECK_THAT(taper.peak_stress_mpa, WithinRel(checked["travel_peak_stress_mpa"], 1e-9));
    CHECK_THAT(taper.yield_margin, WithinRel(checked["yield_margin"], 1e-9));
    SizeDimension thickness;
    thickness.key = "spring.thickness";
    const SizeResult scaled = size(design, {.pull_n = 10.0, .yield_margin = {}}, {thickness});
    REQUIRE_FALSE(scaled.answers.empty());
    CHECK(taper.yield_margin > 1.2 * scaled.answers[0].yield_margin);
    for (const Station& s : taper.design.spring.thickness) CHECK(s.thickness_mm >= 1.2);
}

TEST_CASE("the beam of constant strength is found again", "[shop][closed form]") {
    // Clamped, whole, end load: t(x) = t(0) sqrt(1 - x/l) for one stress all along. The load is the
    // strongest of the travel; it moves by a few tenths of a millimetre as the blade turns, which
    // leaves 0.5 % over the half of the spring that it is far from.
    const Design design = designs::dunlin();
    const Taper taper = propose_taper(design, 10.0, 0.4, 24);
    const Action action = make_action(taper.design);
    double load = 0.0, moment = 0.0;
    for (const Step& step : sweep(action, 0.0, 180.0, 0.5)) {
        for (const Touch& touch : step.turn.contact.all()) {
            if (touch.force_n * touch.x_mm <= moment) continue;
            moment = touch.force_n * touch.x_mm;
            load = touch.x_mm;
        }
    }
    const Profile& profile = taper.design.spring.thickness;
    const double root = thickness_mm(profile, 0.0);
    for (const Station& s : profile) {
        if (s.x_mm < 0.0 || s.x_mm > 0.5 * load) continue;
        CHECK_THAT(s.thickness_mm, WithinRel(root * std::sqrt(1.0 - s.x_mm / load), 5e-3));
    }
    CHECK_THAT(taper.even_stress_mpa, WithinRel(6.0 * moment / (2.3 * root * root), 1e-3));
}

TEST_CASE("the stress of a taper is even where no limit holds it up", "[shop][property]") {
    const Taper taper = propose_taper(designs::dunlin(), 10.0, 0.4, 40);
    Eigen::ArrayXd worst, station;
    for (double angle = 20.0; angle <= 160.0; angle += 0.5) {
        const SpringAlong along = spring_along(taper.design, angle, 0.25);
        station = along.station_mm;
        if (worst.size() == 0) worst = Eigen::ArrayXd::Zero(station.size());
        worst = worst.max(along.back_stress_mpa.abs());
    }
    for (Eigen::Index i = 0; i < station.size(); ++i) {
        if (station[i] > 24.0) continue;
        CHECK_THAT(worst[i], WithinRel(taper.even_stress_mpa, 5e-3));
    }
    CHECK_THAT(taper.peak_stress_mpa, WithinRel(taper.even_stress_mpa, 1e-2));
}

TEST_CASE("a taper keeps steel about the pins", "[shop][property]") {
    const Taper taper = propose_taper(designs::heron(), 10.0, 1.0);
    const Profile& profile = taper.design.spring.thickness;
    CHECK(thickness_mm(profile, -34.0) >= 3.0);  // 2 mm of hole and half as much steel
    CHECK(thickness_mm(profile, 0.0) > thickness_mm(profile, 1.5));
}

TEST_CASE("a taper that cannot be made is refused", "[shop][bad input]") {
    CHECK_THROWS_WITH(propose_taper(designs::heron(), 1.0, 3.5),
                      "no-taper: least 3.5 mm, pull 1 N");
    CHECK_THROWS_AS(propose_taper(designs::heron(), 1.0, 3.5), NoConvergence);
    CHECK_THROWS_WITH(propose_taper(designs::heron(), 0.0, -1.0, 1),
                      ContainsSubstring("pull: must be greater than 0 N, got 0 N") &&
                          ContainsSubstring("least_thickness: must be greater than 0 mm") &&
                          ContainsSubstring("stations: must be at least 2, got 1"));
    Design bare = designs::heron();
    bare.own().blade.nail_nick_mm.reset();
    CHECK_THROWS_WITH(propose_taper(bare, 10.0, 1.0), ContainsSubstring("blade.nail_nick"));
}

#include <algorithm>
#include <cmath>

#include "backspring/core/error.hpp"
#include "backspring/sensitivity/influence.hpp"
#include "catch.hpp"
#include "designs.hpp"
#include "figures_of.hpp"
#include "full_round.hpp"

using namespace backspring;

namespace {

/// The design with a layer off the back that tapers off from one station to its neighbours.
Design dented(const Design& design, const Eigen::ArrayXd& stations, Eigen::Index i, double depth) {
    Design changed = design;
    Profile& profile = changed.spring.thickness;
    if (profile.size() == 1) {
        profile = {{-1.0, profile[0].thickness_mm},
                   {design.own().pad.end_mm, profile[0].thickness_mm}};
    }
    const double left = stations[i - 1], here = stations[i], right = stations[i + 1];
    for (const double x : {left, here, right}) {
        const bool known = std::any_of(profile.begin(), profile.end(),
                                       [&](const Station& s) { return s.x_mm == x; });
        if (!known) profile.push_back({x, thickness_mm(design.spring.thickness, x)});
    }
    std::stable_sort(profile.begin(), profile.end(),
                     [](const Station& a, const Station& b) { return a.x_mm < b.x_mm; });
    for (Station& s : profile) {
        if (s.x_mm <= left || s.x_mm >= right) continue;
        s.thickness_mm -= depth * (s.x_mm <= here ? (s.x_mm - left) / (here - left)
                                                  : (right - s.x_mm) / (right - here));
    }
    return changed;
}

/// Whether a dent would move a hole's mid-line, which a design cannot state for a part of a hole.
bool near_hole(const Design& design, double x_mm, double reach_mm) {
    return std::any_of(
        design.spring.holes.begin(), design.spring.holes.end(), [&](const Hole& hole) {
            return std::abs(hole.center_mm - x_mm) < reach_mm + 0.5 * hole.diameter_mm;
        });
}

}  // namespace

TEST_CASE("influence is what a dent does to whole checks", "[shop][property]") {
    // Against central differences of check(), to 1e-5 of the largest entry.
    const auto& [name, design] = GENERATE(from_range(designs::all()));
    CAPTURE(name);
    const Influence result = influence(design, GrindFace::back, 2.2);
    const Eigen::ArrayXd& x = result.station_mm;
    const double apart = x[1] - x[0], depth = 2e-5;
    for (Eigen::Index i = 1; i + 1 < x.size(); ++i) {
        if (near_hole(design, x[i], apart)) continue;
        CAPTURE(x[i]);
        auto deeper = figures_of(dented(design, x, i, depth));
        auto proud = figures_of(dented(design, x, i, -depth));
        for (const std::string& figure : result.figures) {
            CAPTURE(figure);
            const Eigen::ArrayXd row = result.of(figure);
            const double rate = (deeper[figure] - proud[figure]) / (2.0 * depth);
            CHECK(std::abs(row[i] - 0.1 * rate / apart) <= 1e-5 * row.abs().maxCoeff());
        }
    }
}

TEST_CASE("at a corner of the torque curve a dent does what it does to whole checks",
          "[shop][property]") {
    // The torque's corner goes where the steel taken off moves it, so one side counts: against
    // differences of check() with steel off alone, which err by the curvature times the depth.
    const Design design = full_round();
    const Influence result = influence(design, GrindFace::back, 2.2);
    const Eigen::ArrayXd row = result.of("peak_torque_nmm");
    const Eigen::ArrayXd& x = result.station_mm;
    const double here = figures_of(design).at("peak_torque_nmm");
    const double apart = x[1] - x[0], depth = 1e-4;
    for (Eigen::Index i = 1; i + 1 < x.size(); ++i) {
        if (near_hole(design, x[i], apart)) continue;
        CAPTURE(x[i]);
        const double ground = figures_of(dented(design, x, i, depth)).at("peak_torque_nmm");
        CHECK(std::abs(row[i] - 0.1 * (ground - here) / depth / apart) <=
              2e-3 * row.abs().maxCoeff());
    }
}

TEST_CASE("a pass over all stations is the grinding of the whole length", "[shop][property]") {
    // Holes off the mid-line too: grinding moves the mid-line, not the hole.
    const GrindFace face = GENERATE(GrindFace::back, GrindFace::belly);
    for (const Design& design : {designs::curlew(), designs::godwit(), designs::snipe()}) {
        const Influence result = influence(design, face, 0.5);
        const Eigen::ArrayXd& x = result.station_mm;
        const double depth = 1e-5;
        const Cut cut{
            .face = face, .depth_mm = depth, .region = GrindRegion{x[0], x[x.size() - 1]}};
        auto before = figures_of(design), after = figures_of(grind(design, cut));
        for (const std::string& figure : result.figures) {
            CAPTURE(figure);
            const Eigen::ArrayXd row = result.of(figure);
            const double apart = x[1] - x[0];
            const double sum = apart * (row.sum() - 0.5 * (row[0] + row[row.size() - 1]));
            const double rate = 0.1 * (after[figure] - before[figure]) / depth;
            // One-sided, since a hole on the mid-line has its worst fibre on either side: 1e-5 mm
            // of 3 mm leaves 1e-5 or so, and readings cancel to 1e-4 of their parts.
            CHECK(std::abs(sum - rate) <= 2e-4 * apart * row.abs().sum() + 1e-12);
        }
    }
}

TEST_CASE("a uniform cantilever feels a pass as the moment squared", "[shop][closed form]") {
    // Stiffness at the pivot a: dk/dt(s) = k^2 [3 (a - s)^2/(E I t) + 1/(kappa G A t)] per length.
    const Design design = designs::dunlin();
    const Influence result = influence(design, GrindFace::back, 0.25);
    const double e = 205000.0, b = 2.3, t = 2.6, a = 32.0;
    const double inertia = b * t * t * t / 12.0, shear = 5.0 / 6.0 * e / 2.58 * b * t;
    const double k = 1.0 / (a * a * a / (3.0 * e * inertia) + a / shear);
    const Eigen::ArrayXd row = result.of("stiffness_n_per_mm");
    for (Eigen::Index i = 1; i + 1 < row.size(); ++i) {
        const double s = result.station_mm[i], left = a - s;
        const double apart = result.station_mm[1] - result.station_mm[0];
        if (std::abs(left) < apart) continue;
        // A station's own taper adds the mean of (s - s_i)^2, which is apart^2/6.
        const double squared = left * left + apart * apart / 6.0;
        const double expected =
            left < 0.0 ? 0.0
                       : -0.1 * k * k * (3.0 * squared / (e * inertia * t) + 1.0 / (shear * t));
        CHECK_THAT(row[i], WithinAbs(expected, 1e-9));
    }
}

TEST_CASE("a pass does nothing ahead of where the tang bears", "[shop][property]") {
    Design design = designs::heron();
    design.own().pad.end_mm = 44.0;
    design.spring.thickness.back() = {44.0, 2.5};
    const Influence result = influence(design);
    for (Eigen::Index i = 0; i < result.station_mm.size(); ++i) {
        if (result.station_mm[i] > 40.0) CHECK((result.change_per_pass.col(i) == 0.0).all());
    }
}

TEST_CASE("the worst station's own thinning raises the stress", "[shop][property]") {
    const Design design = designs::dunlin();
    const Influence result = influence(design);
    const Eigen::ArrayXd stress = result.of("travel_peak_stress_mpa");
    CHECK(stress[0] > 0.0);  // at the clamp
    CHECK((stress.tail(stress.size() - 2) <= 0.0).all());
}

TEST_CASE("a pass takes pull, but for a little under the touch", "[shop][property]") {
    // There a softer end lets the tang bear a little farther out.
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Influence result = influence(design);
        const Eigen::ArrayXd pull = result.of("peak_pull_n");
        CHECK(pull.maxCoeff() <= -0.01 * pull.minCoeff());
        for (Eigen::Index i = 0; i < pull.size(); ++i) {
            if (result.station_mm[i] < 28.0) CHECK(pull[i] <= 0.0);
        }
    }
}

TEST_CASE("influence refuses what it cannot answer", "[shop][bad input]") {
    const Design design = designs::heron();
    CHECK_THROWS_WITH(
        influence(design, GrindFace::pad),
        ContainsSubstring("face: must be back or belly: grinding the pad also takes preload"));
    CHECK_THROWS_WITH(influence(design, GrindFace::back, 0.0),
                      ContainsSubstring("spacing_mm: must be at least 0.05 mm, got 0 mm"));
    CHECK_THROWS_AS(influence(design).of("colour"), OutOfRange);
}

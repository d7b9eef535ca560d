#include <cmath>

#include "backspring/check/columns.hpp"
#include "backspring/grind/grind_flush.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

/// Loaded open back above the liners, every 0.05 mm ahead of the middle pin.
std::vector<Station> standing(const Design& design, const Design& at_start, const LinerLine* line) {
    const SpringAlong along = spring_along(design, 180.0, 0.05);
    std::vector<Station> heights;
    for (Eigen::Index i = 0; i < along.station_mm.size(); ++i) {
        const double x = along.station_mm[i];
        if (x < 0.0) continue;
        const double belly = belly_mm(design.spring, design.own().pad, x);
        const double back =
            along.face_mm[i] + along.deflection_mm[i] + belly + along.thickness_mm[i];
        double allowed =
            at_start.own().tang.open_mm + belly + thickness_mm(at_start.spring.thickness, x);
        if (line != nullptr) {
            const double share = (x - line->rear_mm) / (line->front_mm - line->rear_mm);
            allowed = std::lerp(line->rear_height_mm, line->front_height_mm, share);
        }
        heights.push_back({x, back - allowed});
    }
    return heights;
}

double removed_at(const Flush& flush, const Design& at_start, double x) {
    return thickness_mm(at_start.spring.thickness, x) -
           thickness_mm(flush.design.spring.thickness, x);
}

}  // namespace

TEST_CASE("what stood proud is flush, and nothing else is touched", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        // Liners that follow an arched spring stand as much higher.
        const double arched = belly_mm(design.spring, design.own().pad, 6.0);
        const LinerLine line{-34.0, 9.0 + arched, 36.5, 6.9 + arched};
        for (const LinerLine* given : {static_cast<const LinerLine*>(nullptr), &line}) {
            CAPTURE(name, given != nullptr);
            const auto liners = given ? std::optional(*given) : std::nullopt;
            const Flush flush = grind_flush(design, liners);
            REQUIRE_FALSE(flush.passes.empty());
            CHECK(flush.left_proud_mm <= 0.001);
            for (const Station& s : standing(flush.design, design, given)) {
                const double removed = removed_at(flush, design, s.x_mm);
                CAPTURE(s.x_mm, removed);
                // 0.00005 mm: the bent back between stations 0.5 mm apart.
                CHECK(s.thickness_mm <= 0.001 + 5e-5);
                CHECK(removed > -1e-12);
                // Springing down as it thins, a ground place may end a little low, never much.
                if (removed > 1e-9) CHECK(s.thickness_mm > -0.02);
            }
        }
    }
}

TEST_CASE("steel ahead of the contact springs nothing back", "[shop][property]") {
    const Design heron = designs::heron();
    const Flush flush = grind_flush(heron, std::nullopt, 1.0);
    REQUIRE(flush.passes.size() == 1);
    const double contact = contact_at(heron, 180.0).touches[0].x_mm;
    for (double x = 0.0; x < contact - 0.01; x += 0.5)
        CHECK_THAT(removed_at(flush, heron, x), WithinAbs(0.0, 1e-14));
    // 0.00005 mm: the contact lies between stations 0.5 mm apart.
    for (const Station& s : standing(flush.design, heron, nullptr)) {
        if (s.x_mm > contact) CHECK_THAT(s.thickness_mm, WithinAbs(0.0, 5e-5));
    }
    CHECK_THAT(removed_at(flush, heron, 36.5), WithinAbs(flush.passes[0].proud_mm, 1e-12));
}

TEST_CASE("no pass takes off more than it may", "[shop][property]") {
    const Design heron = designs::heron();
    const Flush flush = grind_flush(heron, std::nullopt, 0.02);
    double last = 0.0;
    for (const FlushPass& pass : flush.passes) {
        CHECK(pass.after.removed_mm - last <= 0.02 + 1e-12);
        CHECK(pass.after.removed_mm > last);
        last = pass.after.removed_mm;
    }
    const Flush at_once = grind_flush(heron, std::nullopt, 1.0);
    CHECK_THAT(last, WithinAbs(at_once.passes.back().after.removed_mm, 1e-9));
    CHECK(*flush.passes.back().after.peak_pull_n == *grind_row(flush.design, 0.0).peak_pull_n);
}

TEST_CASE("a spring that is nowhere proud is left alone", "[shop][property]") {
    const Design heron = designs::heron();
    const Flush flush = grind_flush(heron, LinerLine{-34.0, 9.0, 36.5, 9.0});
    CHECK(flush.passes.empty());
    CHECK(flush.removed.empty());
    CHECK(flush.left_proud_mm < 0.0);
    CHECK(flush.design.spring.thickness.size() == heron.spring.thickness.size());
}

TEST_CASE("flush that needs the hole's steel is refused", "[shop][abuse]") {
    CHECK_THROWS_AS(grind_flush(designs::heron(), LinerLine{-34.0, 6.9, 36.5, 6.9}), NoConvergence);
    CHECK_THROWS_AS(grind_flush(designs::heron(), LinerLine{5.0, 8.0, 5.0, 8.0}), InvalidInput);
    CHECK_THROWS_AS(grind_flush(designs::heron(), LinerLine{5.0, std::nan(""), 9.0, 8.0}),
                    InvalidInput);
    for (const double pass : {0.0, -1.0, std::nan("")}) {
        CHECK_THROWS_AS(grind_flush(designs::heron(), std::nullopt, pass), InvalidInput);
    }
}

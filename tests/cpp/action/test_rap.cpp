#include <cmath>
#include <limits>

#include "backspring/action/rap.hpp"
#include "backspring/action/stroke.hpp"
#include "backspring/core/angle.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

/// A design at its closed rest, and the next one.
struct Closed {
    Action action;
    Contact rest, next;
};

Closed closed(const Design& design) {
    Action action = make_action(design);
    const Rests rests = find_rests(action.joint, design.own().tang.half_stop_mm.has_value());
    const Contact rest = rests.closed.value();
    return {std::move(action), rest, rests.half_stop ? *rests.half_stop : rests.open};
}

/// Energy of the blade as it comes home on the way between both.
double closing_energy_mj(const Closed& at) {
    const double from = at.rest.blade_angle_deg, to = at.next.blade_angle_deg;
    const Turns travel(at.action, {from, to});
    return LazyStroke(travel, from, to).closing_energy_mj();
}

Design frictionless(Design design) {
    design.friction = {};
    return design;
}

}  // namespace

TEST_CASE("spring and friction together take up the blade's energy", "[action][property]") {
    for (const auto& [name, design] : designs::all()) {
        const Closed at = closed(design);
        for (const double energy_mj : {1e-3, 1.0, 7.3, 40.0, 150.0}) {
            CAPTURE(name, energy_mj);
            const auto past = overtravel(at.action, at.rest, energy_mj);
            REQUIRE(past);
            CHECK_THAT(past->stored_mj + past->friction_work_mj,
                       WithinAbs(energy_mj, 1e-9 * (1.0 + energy_mj)));
            const double angle = at.rest.blade_angle_deg - past->angle_deg;
            const double stored =
                contact_at(at.action.joint, angle).energy_nmm - at.rest.energy_nmm;
            CHECK_THAT(past->stored_mj, WithinAbs(stored, 1e-9 * (1.0 + energy_mj)));
        }
    }
}

TEST_CASE("without friction the torque's work past the rest is the energy", "[action][property]") {
    const Closed at = closed(frictionless(designs::heron()));
    const auto past = overtravel(at.action, at.rest, 30.0);
    REQUIRE(past);
    CHECK(past->friction_work_mj == 0.0);
    constexpr int parts = 4000;
    double work_mj = 0.0;
    for (int i = 0; i < parts; ++i) {
        const double angle = at.rest.blade_angle_deg - past->angle_deg * (i + 0.5) / parts;
        work_mj -= contact_at(at.action.joint, angle).torque_nmm * radians(past->angle_deg) / parts;
    }
    CHECK_THAT(work_mj, WithinRel(30.0, 1e-6));
}

TEST_CASE("friction's work past the rest is its torque added up in fine parts",
          "[action][property]") {
    for (const auto& design : {designs::heron(), designs::plover(), designs::snipe()}) {
        const Closed at = closed(design);
        const auto past = overtravel(at.action, at.rest, 60.0);
        REQUIRE(past);
        const double rest = at.rest.blade_angle_deg, last = rest - past->angle_deg;
        const Turns way(at.action, {last, rest});
        double work_mj = 0.0;
        for (const Piece& piece : way.pieces()) {
            constexpr int parts = 300;
            const double low = angle_of(piece.front()), part = angle_of(piece.back()) - low;
            for (int i = 0; i < parts; ++i) {
                // Two points of Gauss's rule.
                for (const double place :
                     {0.5 - std::sqrt(1.0 / 12.0), 0.5 + std::sqrt(1.0 / 12.0)})
                    work_mj += 0.5 * radians(part) / parts *
                               turn_at(at.action, low + part * (i + place) / parts).friction_nmm;
            }
        }
        CHECK_THAT(past->friction_work_mj, WithinRel(work_mj, 1e-9));
    }
}

TEST_CASE("of several energies each takes the blade as far as by itself", "[action][property]") {
    for (const auto& [name, design] : designs::all()) {
        const Closed at = closed(design);
        const double energies_mj[] = {40.0, 0.0, 0.16, 7.3};
        const auto found = overtravels(at.action, at.rest, energies_mj);
        for (std::size_t i = 0; i < found.size(); ++i) {
            CAPTURE(name, energies_mj[i]);
            const auto alone = overtravel(at.action, at.rest, energies_mj[i]);
            REQUIRE(found[i].has_value() == alone.has_value());
            if (alone) CHECK_THAT(found[i]->angle_deg, WithinAbs(alone->angle_deg, 1e-9));
        }
    }
}

TEST_CASE("more energy dips the edge deeper", "[action][property]") {
    for (const auto& [name, design] : designs::all()) {
        const Closed at = closed(design);
        double last_mm = 0.0;
        for (double energy_mj = 2.0; energy_mj <= 150.0; energy_mj += 4.0) {
            CAPTURE(name, energy_mj);
            const Rap found = rap(at.action, at.rest, energy_mj, 70.0, 0.8);
            REQUIRE(found.edge_dip_mm);
            CHECK(*found.edge_dip_mm > last_mm);
            last_mm = *found.edge_dip_mm;
        }
    }
}

TEST_CASE("a kick stops the blade sooner, the farther from the pivot the sooner",
          "[action][property]") {
    const Closed plain = closed(designs::heron());
    double last_deg = overtravel(plain.action, plain.rest, 20.0)->angle_deg;
    for (const double distance_mm : {7.0, 8.0, 9.0}) {
        CAPTURE(distance_mm);
        Design design = designs::plover();
        design.own().tang.kick->distance_mm = distance_mm;
        const Closed kicked = closed(design);
        const double angle_deg = overtravel(kicked.action, kicked.rest, 20.0)->angle_deg;
        CHECK(angle_deg < last_deg);
        last_deg = angle_deg;
    }
}

TEST_CASE("without friction closing gives back what opening took", "[action][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Closed at = closed(frictionless(design));
        const Stroke stroke = make_stroke(at.action, at.rest, at.next).value();
        CHECK_THAT(closing_energy_mj(at), WithinRel(stroke.energy_up_mj, 1e-9));
    }
}

TEST_CASE("friction takes from the closing energy, by its work", "[action][oracle]") {
    constexpr int parts = 4000;
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Closed at = closed(design);
        // From where friction lets go, by the middle of many parts.
        double from = make_stroke(at.action, at.rest, at.next)->crest_angle_deg;
        while (turn_at(at.action, from).closing_nmm() < 0.0) from -= 1e-3;
        const double way = from - at.rest.blade_angle_deg;
        double work = 0.0;
        for (int i = 0; i < parts; ++i) {
            const double angle = at.rest.blade_angle_deg + way * (i + 0.5) / parts;
            work += turn_at(at.action, angle).friction_nmm * radians(way) / parts;
        }
        const double released = contact_at(at.action.joint, from).energy_nmm - at.rest.energy_nmm;
        CHECK_THAT(closing_energy_mj(at), WithinRel(released - work, 1e-4));
    }
}

TEST_CASE("where friction holds the blade nothing drives it", "[action][property]") {
    Design design = designs::heron();
    design.friction = {.spring = 1.0, .pivot = 1.0, .pivot_pin_mm = 3.2};
    const Closed at = closed(design);
    CHECK(closing_energy_mj(at) == 0.0);
    CHECK(overtravel(at.action, at.rest, 0.0)->angle_deg == 0.0);
}

TEST_CASE("a blade too fast for its spring is not stopped, and no dip is made up",
          "[action][property]") {
    const Closed at = closed(designs::heron());
    const Rap found = rap(at.action, at.rest, 1e5, 70.0, 0.8);
    CHECK(found.energy_mj == 1e5);
    CHECK_FALSE(found.past);
    CHECK_FALSE(found.edge_dip_mm);
    CHECK_FALSE(found.clearance_left_mm);
}

TEST_CASE("the dip is overtravel times radius, and counts against the clearance",
          "[action][closed form]") {
    const Closed at = closed(designs::heron());
    const Rap found = rap(at.action, at.rest, 5.0, 70.0, 0.8);
    REQUIRE(found.past);
    CHECK_THAT(*found.edge_dip_mm, WithinRel(70.0 * radians(found.past->angle_deg), 1e-14));
    CHECK_THAT(*found.clearance_left_mm, WithinAbs(0.8 - *found.edge_dip_mm, 1e-14));
    CHECK_FALSE(rap(at.action, at.rest, 5.0, 70.0, {}).clearance_left_mm);
}

TEST_CASE("what no blade can have is refused", "[action][rules]") {
    const Closed at = closed(designs::heron());
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (const double energy_mj : {-1.0, nan}) {
        CHECK_THROWS_AS(overtravel(at.action, at.rest, energy_mj), InvalidInput);
        CHECK_THROWS_AS(rap(at.action, at.rest, energy_mj, 70.0, 0.8), InvalidInput);
    }
    for (const double radius_mm : {0.0, -70.0, nan}) {
        CHECK_THROWS_AS(rap(at.action, at.rest, 5.0, radius_mm, 0.8), InvalidInput);
    }
    CHECK_THROWS_AS(rap(at.action, at.rest, 5.0, 70.0, -0.1), InvalidInput);
    CHECK_THROWS_WITH(rap(at.action, at.rest, 5.0, 0.0, 0.8),
                      ContainsSubstring("edge_radius_mm: must be greater than 0 mm, got 0 mm"));
}

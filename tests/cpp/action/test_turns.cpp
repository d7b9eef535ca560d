#include <algorithm>
#include <cmath>
#include <numbers>

#include "backspring/action/turns.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/design/joint_of.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

struct Travelled {
    Action action;
    double from_deg, to_deg;
};

Travelled travelled_by(const Design& design) {
    Action action = make_action(design);
    const Rests rests = find_rests(action.joint, design.own().tang.half_stop_mm.has_value());
    const double from = rests.closed ? rests.closed->blade_angle_deg : 0.0;
    return {std::move(action), from, rests.open.blade_angle_deg};
}

/// Three points of Gauss's rule in each of many parts, closer at the ends of a piece.
double fine_friction_work_mj(const Action& action, const Piece& piece) {
    constexpr int parts = 40;
    constexpr double pi = std::numbers::pi;
    const double low = angle_of(piece.front()), high = angle_of(piece.back());
    const auto friction = [&](double angle) { return turn_at(action, angle).friction_nmm; };
    double sum = 0.0, from = low;
    for (int i = 1; i <= parts; ++i) {
        const double to = std::lerp(low, high, 0.5 - 0.5 * std::cos(pi * i / parts));
        const double middle = 0.5 * (from + to), away = 0.5 * (to - from) * std::sqrt(0.6);
        sum +=
            radians(to - from) *
            (5.0 * (friction(middle - away) + friction(middle + away)) + 8.0 * friction(middle)) /
            18.0;
        from = to;
    }
    return sum;
}

void each_is_the_contact_at_its_angle(const Travelled& way, const Turns& turns) {
    const auto all = turns.all();
    const auto harder = [](const Turn* a, const Turn* b) {
        return std::abs(a->contact.torque_nmm) < std::abs(b->contact.torque_nmm);
    };
    const double most_nmm =
        std::abs((*std::max_element(all.begin(), all.end(), harder))->contact.torque_nmm);
    for (const Turn* turn : all) {
        const Contact alone = contact_at(way.action.joint, angle_of(turn));
        CAPTURE(angle_of(turn));
        REQUIRE(turn->contact.count == alone.count);
        CHECK_THAT(turn->contact.force_n, WithinRel(alone.force_n, 1e-11));
        CHECK_THAT(turn->contact.energy_nmm, WithinRel(alone.energy_nmm, 1e-11));
        CHECK_THAT(turn->contact.torque_nmm, WithinAbs(alone.torque_nmm, 1e-10 * most_nmm));
    }
}

}  // namespace

TEST_CASE("a turn found from those beside it is the contact at its angle", "[action][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Travelled way = travelled_by(design);
        each_is_the_contact_at_its_angle(way, Turns(way.action, {way.from_deg, way.to_deg}));
    }
}

TEST_CASE("where a flat ends beyond the pad, the pad's edge bears before the arc behind it",
          "[action][property]") {
    Design design = designs::heron();
    design.own().tang.pivot_mm = 32.9;
    const Travelled way = travelled_by(design);
    const Turns turns(way.action, {way.from_deg, way.to_deg});
    each_is_the_contact_at_its_angle(way, turns);
    const double edge_mm = design.own().pad.end_mm;
    std::vector<bool> flats;
    for (const Turn* turn : turns.all()) {
        const Touch& touch = turn->contact.touches[0];
        if (touch.x_mm == edge_mm) flats.push_back(touch.part.flat);
    }
    REQUIRE(flats.size() > 2);
    CHECK((flats.front() && !flats.back()));
}

TEST_CASE("an integral over a way is that of its parts", "[action][property]") {
    const Travelled way = travelled_by(designs::heron());
    const Turns turns(way.action, {way.from_deg, way.to_deg});
    const auto friction = [](const Turn& turn) { return turn.friction_nmm; };
    const TurnIntegral work(turns.pieces(), friction);
    double sum_mj = 0.0;
    for (const Piece& piece : turns.pieces()) sum_mj += fine_friction_work_mj(way.action, piece);
    CHECK_THAT(work.between(way.from_deg, way.to_deg), WithinRel(sum_mj, 1e-9));
    const double middle = 61.7;
    CHECK_THAT(work.between(way.from_deg, middle) + work.between(middle, way.to_deg),
               WithinRel(work.between(way.from_deg, way.to_deg), 1e-13));
}

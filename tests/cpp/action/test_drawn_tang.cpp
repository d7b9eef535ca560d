#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

#include "backspring/action/rest.hpp"
#include "backspring/check/check.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/design/joint_of.hpp"
#include "backspring/spring/flexibility.hpp"
#include "catch.hpp"
#include "designs.hpp"
#include "drawn_shapes.hpp"

using namespace backspring;

namespace {

Design with_outline(Design design, std::vector<OutlinePoint> rows) {
    Tang& tang = design.own().tang;
    tang = tang_with_outline(tang, std::move(rows));
    return design;
}

bool same_part(const Contact& a, const Contact& b, const Pad& pad) {
    if (a.count != b.count) return false;
    for (int i = 0; i < a.count; ++i) {
        const Touch &p = a.touches[static_cast<std::size_t>(i)],
                    &q = b.touches[static_cast<std::size_t>(i)];
        const auto edge = [&](double x) { return x == pad.start_mm || x == pad.end_mm; };
        if (p.part.arc != q.part.arc || p.part.flat != q.part.flat) return false;
        if (p.part.kick != q.part.kick || edge(p.x_mm) != edge(q.x_mm)) return false;
    }
    return true;
}

/// Fourth-order difference of the energy; nothing where another part comes to bear within it.
std::optional<double> rate_of_energy(const Joint& joint, double angle_deg, double step_deg) {
    std::array<Contact, 5> all;
    for (int i = 0; i < 5; ++i) {
        all[static_cast<std::size_t>(i)] = contact_at(joint, angle_deg + (i - 2) * step_deg);
        if (!same_part(all[0], all[static_cast<std::size_t>(i)], joint.pad)) return std::nullopt;
    }
    return (8.0 * (all[3].energy_nmm - all[1].energy_nmm) -
            (all[4].energy_nmm - all[0].energy_nmm)) /
           (12.0 * radians(step_deg));
}

/// The most that one force stores: every place of the outline tried, with no search.
double most_energy(const Joint& joint, double angle_deg) {
    const double turn = radians(angle_deg) - std::numbers::pi;
    const double c = std::cos(turn), s = std::sin(turn);
    double most = 0.0;
    const auto consider = [&](double u, double w) {
        const double x = joint.pivot_mm + c * u - s * w, y = s * u + c * w;
        if (x < joint.pad.start_mm || x > joint.pad.end_mm) return;
        const double overlap = y - joint.face_mm - joint.face_slope * x;
        if (overlap <= 0.0) return;
        const double give = deflection_per_force(joint.flexibility, x, x);
        most = std::max(most, 0.5 * overlap * overlap / give);
    };
    const auto& arcs = joint.outline.body;
    for (std::size_t i = 0; i < arcs.size(); ++i) {
        const auto place = [&](const Arc& arc, double normal) {
            return std::array{arc.u_mm + arc.radius_mm * std::cos(normal),
                              arc.w_mm + arc.radius_mm * std::sin(normal)};
        };
        for (int k = 0; k <= 300; ++k) {
            const auto [u, w] =
                place(arcs[i], std::lerp(arcs[i].from_rad, arcs[i].to_rad, k / 300.0));
            consider(u, w);
        }
        if (i + 1 == arcs.size()) continue;
        const auto from = place(arcs[i], arcs[i].to_rad);
        const auto to = place(arcs[i + 1], arcs[i + 1].from_rad);
        for (int k = 0; k <= 300; ++k) {
            consider(std::lerp(from[0], to[0], k / 300.0), std::lerp(from[1], to[1], k / 300.0));
        }
    }
    return most;
}

}  // namespace

TEST_CASE("usual tangs drawn out bear as they did", "[drawn tang]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Design again = with_outline(design, shapes::rows_of(design.own().tang));
        const Check was = check(design), now = check(again);
        REQUIRE(now.positions.size() == was.positions.size());
        for (std::size_t i = 0; i < was.positions.size(); ++i) {
            CHECK_THAT(now.positions[i].force_n, WithinRel(was.positions[i].force_n, 1e-9));
            CHECK_THAT(now.positions[i].blade_angle_deg,
                       WithinAbs(was.positions[i].blade_angle_deg, 1e-9));
        }
        REQUIRE(now.strokes.size() == was.strokes.size());
        for (std::size_t i = 0; i < was.strokes.size(); ++i) {
            CHECK_THAT(now.strokes[i].stroke.peak_torque_nmm,
                       WithinRel(was.strokes[i].stroke.peak_torque_nmm, 1e-9));
            CHECK_THAT(now.strokes[i].stroke.energy_released_mj,
                       WithinRel(was.strokes[i].stroke.energy_released_mj, 1e-9));
        }
        CHECK_THAT(now.travel.peak_stress_mpa, WithinRel(was.travel.peak_stress_mpa, 1e-9));
    }
}

TEST_CASE("on any convex shape the torque is the rate of the energy", "[drawn tang][energy]") {
    int compared = 0;
    for (int seed = 0; seed < 20; ++seed) {
        CAPTURE(seed);
        const Design design = with_outline(seed % 2 ? designs::plover() : designs::heron(),
                                           shapes::random_rows(seed));
        const Joint joint = make_joint(design);
        for (double angle = -3.0; angle < 180.0; angle += 7.3) {
            const auto rate = rate_of_energy(joint, angle, 0.02);
            const Contact contact = contact_at(joint, angle);
            if (!rate || contact.count == 0) continue;
            ++compared;
            CAPTURE(angle, contact.torque_nmm);
            // The forces work on an arm of a few millimetres.
            CHECK_THAT(*rate, WithinAbs(contact.torque_nmm, 1e-6 * 4.5 * contact.force_n));
        }
    }
    CHECK(compared > 300);
}

TEST_CASE("a drawn shape bears where trying every place finds it", "[drawn tang][oracle]") {
    std::vector<std::vector<OutlinePoint>> all{shapes::spiral_rows(3.0, 0.35, 40)};
    for (int seed = 30; seed < 40; ++seed) all.push_back(shapes::random_rows(seed));
    for (const auto& rows : all) {
        const Joint joint = make_joint(with_outline(designs::heron(), rows));
        for (double angle = 0.0; angle < 181.0; angle += 9.0) {
            CAPTURE(angle, rows.size());
            const double found = contact_at(joint, angle).energy_nmm;
            const double tried = most_energy(joint, angle);
            // A place tried half a step beside the best stores less; a pad's edge is not hit.
            CHECK(found >= tried * (1.0 - 1e-9));
            CHECK_THAT(found, WithinRel(tried, 1e-4) || WithinAbs(tried, 1e-5));
        }
    }
}

TEST_CASE("a flat beside the faces holds the blade and is told", "[drawn tang]") {
    const double t = radians(120.0), d = 4.8;
    const std::vector<OutlinePoint> rows{{5.0, 4.5, 0.0},
                                         {(d - 4.5 * std::sin(t)) / std::cos(t), 4.5, 0.0},
                                         {-4.6, (d + 4.6 * std::cos(t)) / std::sin(t), 0.0},
                                         {-4.6, -4.6, 0.0},
                                         {9.0, -4.6, 0.0}};
    const Check found = check(with_outline(designs::heron(), rows));
    const auto told = std::ranges::find(found.notices, NoticeCode::further_rest, &Notice::code);
    REQUIRE(told != found.notices.end());
    CHECK_THAT(told->parameters[0].value, WithinAbs(150.0, 3.0));
    CHECK_THAT(told->parameters[1].value, WithinAbs(d, 1e-9));
}

#include <cmath>

#include "backspring/check/check.hpp"
#include "backspring/check/columns.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

/// Every length times a factor; moduli, strengths and angles stay.
Design scaled(Design design, double by) {
    for (Station& s : design.spring.thickness) s = {s.x_mm * by, s.thickness_mm * by};
    for (Hole& h : design.spring.holes) {
        h = {h.center_mm * by, h.diameter_mm * by, h.offset_mm * by};
    }
    for (WidthStation& s : design.spring.widths) s = {s.x_mm * by, s.width_mm * by};
    for (MidLinePoint& p : design.spring.mid_line) p = {p.x_mm * by, p.height_mm * by};
    design.spring.width_mm *= by;
    design.spring.support.rear_pin_mm *= by;
    design.spring.support.root_stiffness_nmm_per_rad *= by * by * by;
    design.own().pad = {design.own().pad.start_mm * by, design.own().pad.end_mm * by};
    Tang& tang = design.own().tang;
    for (double* length : {&tang.pivot_mm, &tang.open_mm, &tang.closed_mm, &tang.corner_open_mm,
                           &tang.corner_closed_mm, &tang.front_mm}) {
        *length *= by;
    }
    if (tang.half_stop_mm) *tang.half_stop_mm *= by;
    if (tang.kick) {
        tang.kick =
            Kick{tang.kick->distance_mm * by, tang.kick->height_mm * by, tang.kick->radius_mm * by};
    }
    design.own().fit = {design.own().fit.preload_mm * by, design.own().fit.dial_mm * by};
    *design.own().blade.nail_nick_mm *= by;
    design.friction.pivot_pin_mm *= by;
    return design;
}

}  // namespace

TEST_CASE("forces scale with Young's modulus and with width", "[design][property]") {
    for (const auto& [name, design] : designs::all()) {
        Design stiffer = design, wider = design;
        // A root stiffness is steel too.
        stiffer.spring.elastic.youngs_modulus_mpa *= 1.3;
        stiffer.spring.support.root_stiffness_nmm_per_rad *= 1.3;
        wider.spring = with_width(wider.spring, 1.3 * wider.spring.width_mm);
        wider.spring.support.root_stiffness_nmm_per_rad *= 1.3;
        for (double angle = 0.0; angle <= 180.0; angle += 7.5) {
            CAPTURE(name, angle);
            const Contact plain = contact_at(design, angle);
            const Contact a = contact_at(stiffer, angle), b = contact_at(wider, angle);
            CHECK_THAT(a.force_n, WithinRel(1.3 * plain.force_n, 1e-11));
            CHECK_THAT(b.force_n, WithinRel(1.3 * plain.force_n, 1e-11));
            CHECK_THAT(a.touches[0].x_mm, WithinRel(plain.touches[0].x_mm, 1e-11));
        }
    }
}

TEST_CASE("twice the thickness is eight times the force, less the shear", "[design][property]") {
    Design thin = designs::dunlin(), thick = thin;
    thin.spring.thickness = {{0.0, 0.5}};
    thick.spring.thickness = {{0.0, 1.0}};
    // Shear's share is 0.774 (t/x)^2: 0.0002 and 0.0008 here, so the ratio is 8 (1 - 0.0006).
    for (double angle = 15.0; angle <= 165.0; angle += 15.0) {
        CAPTURE(angle);
        const double ratio = contact_at(thick, angle).force_n / contact_at(thin, angle).force_n;
        CHECK(ratio < 8.0);
        CHECK(ratio > 8.0 * (1.0 - 1e-3));
    }
}

TEST_CASE("a mirrored spring pulls alike and swaps its fibres", "[design][property]") {
    for (const Design& design : {designs::curlew(), designs::godwit()}) {
        Design mirrored = design;
        for (Hole& hole : mirrored.spring.holes) hole.offset_mm = -hole.offset_mm;
        CHECK(contact_at(mirrored, 45.0).force_n == contact_at(design, 45.0).force_n);
        const SpringAlong a = spring_along(design, 45.0), b = spring_along(mirrored, 45.0);
        CHECK((a.back_stress_mpa == -b.belly_stress_mpa).all());
        CHECK((a.belly_stress_mpa == -b.back_stress_mpa).all());
    }
}

TEST_CASE("more preload leaves less margin everywhere", "[design][property]") {
    for (auto [name, design] : designs::all()) {
        double margin = 1e9, open_margin = 1e9, energy = 0.0;
        for (double preload = 0.2; preload <= 1.2; preload += 0.1) {
            CAPTURE(name, preload);
            design.own().fit.preload_mm = preload;
            const Check result = check(design);
            const Position* open = result.position("open");
            CHECK(*result.travel.yield_margin < margin);
            CHECK(*open->yield_margin < open_margin);
            CHECK(open->energy_mj > energy);
            margin = *result.travel.yield_margin;
            open_margin = *open->yield_margin;
            energy = open->energy_mj;
        }
    }
}

TEST_CASE("a knife drawn in another unit is the same knife", "[design][property]") {
    // Lengths over 25.4 with moduli kept: forces over 25.4^2, torques over 25.4^3, angles alike.
    constexpr double by = 1.0 / 25.4;
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Check a = check(design), b = check(scaled(design, by));
        REQUIRE(a.positions.size() == b.positions.size());
        for (std::size_t i = 0; i < a.positions.size(); ++i) {
            const Position &p = a.positions[i], &q = b.positions[i];
            CHECK_THAT(q.force_n, WithinRel(p.force_n * by * by, 1e-9));
            CHECK_THAT(q.blade_angle_deg, WithinAbs(p.blade_angle_deg, 1e-9));
            CHECK_THAT(q.peak_stress_mpa, WithinRel(p.peak_stress_mpa, 1e-9));
            CHECK_THAT(q.reading_loaded_mm, WithinAbs(p.reading_loaded_mm * by, 1e-11));
        }
        REQUIRE(a.strokes.size() == b.strokes.size());
        for (std::size_t i = 0; i < a.strokes.size(); ++i) {
            // Peaks at a kink of the torque are found to 5e-5.
            CHECK_THAT(b.strokes[i].stroke.peak_torque_nmm,
                       WithinRel(a.strokes[i].stroke.peak_torque_nmm * by * by * by, 5e-5));
            CHECK_THAT(b.strokes[i].stroke.crest_angle_deg,
                       WithinAbs(a.strokes[i].stroke.crest_angle_deg, 1e-6));
        }
    }
}

TEST_CASE("a knife drawn larger is the same knife", "[design][property]") {
    // Larger than the rules let a design be, so joint by joint.
    constexpr double by = 25.4;
    for (const auto& [name, design] : designs::all()) {
        const Design large = scaled(design, by);
        const Joint joint =
            make_joint(large.spring, large.own().pad, large.own().tang, large.own().fit);
        for (double angle = 0.0; angle <= 180.0; angle += 4.5) {
            CAPTURE(name, angle);
            const Contact contact = contact_at(design, angle);
            CHECK_THAT(contact_at(joint, angle).force_n,
                       WithinRel(contact.force_n * by * by, 1e-10));
        }
    }
}

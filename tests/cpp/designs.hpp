#pragma once

#include <array>
#include <string>
#include <vector>

#include "backspring/check/look.hpp"
#include "backspring/grind/grind.hpp"

// Designs for the tests. All patterns are invented; none is a knife that exists.
namespace designs {

using backspring::Band;
using backspring::Design;
using backspring::Kick;
using backspring::SupportKind;

/// The worked example that fixes the conventions: tapered belly, two pins, square tang.
inline Design heron() {
    Design design;
    design.spring.thickness = {{-38.0, 3.2}, {-4.0, 3.8}, {0.0, 3.8},
                               {7.0, 3.1},   {25.0, 2.4}, {36.5, 2.5}};
    design.spring.width_mm = 2.3;
    design.spring.support = {
        .kind = SupportKind::two_pins, .rear_pin_mm = 34.0, .root_stiffness_nmm_per_rad = 0.0};
    design.spring.holes = {{-34.0, 2.0, 0.0, backspring::HoleFor::rear_pin},
                           {0.0, 2.0, 0.0, backspring::HoleFor::middle_pin}};
    design.own().pad = {27.0, 36.5};
    design.spring.elastic = {.youngs_modulus_mpa = 205000.0, .poisson = 0.29};
    design.strength.yield_mpa = {.value = 1300.0, .low = 1200.0, .high = 1400.0};
    design.own().tang.pivot_mm = 32.0;
    design.own().tang.open_mm = 4.5;
    design.own().tang.half_stop_mm = 4.62;
    design.own().tang.closed_mm = 4.6;
    design.own().tang.corner_open_mm = 0.7;
    design.own().tang.corner_closed_mm = 0.7;
    design.own().tang.front_mm = 5.0;
    design.own().fit = {.preload_mm = 0.9, .dial_mm = 33.5};
    design.own().blade.nail_nick_mm = 35.0;
    design.own().blade.inertia_kg_mm2 = 52.0;
    design.friction = {.spring = 0.12, .pivot = 0.12, .pivot_pin_mm = 3.2};
    return design;
}

/// A kick whose nose lies on a pad that reaches back for it, and bears when closed.
inline Design plover() {
    Design design = heron();
    design.own().pad = {22.0, 36.5};
    design.own().tang.kick = Kick{.distance_mm = 8.0, .height_mm = 0.2, .radius_mm = 0.5};
    return design;
}

/// A round end instead of a half-stop.
inline Design wren() {
    Design design = heron();
    design.own().tang.half_stop_mm.reset();
    design.own().tang.corner_open_mm = 2.5;
    design.own().tang.corner_closed_mm = 2.5;
    return design;
}

/// A plain strip held fast at the middle pin.
inline Design dunlin() {
    Design design = heron();
    design.spring.thickness = {{0.0, 2.6}};
    design.spring.support = {
        .kind = SupportKind::clamped, .rear_pin_mm = 0.0, .root_stiffness_nmm_per_rad = 0.0};
    design.spring.holes.clear();
    return design;
}

/// A yielding root and a hole off the mid-line.
inline Design curlew() {
    Design design = heron();
    design.spring.support = {.kind = SupportKind::root_stiffness,
                             .rear_pin_mm = 0.0,
                             .root_stiffness_nmm_per_rad = 2.0e5};
    design.spring.holes = {{0.0, 1.6, 0.5, backspring::HoleFor::middle_pin}, {12.0, 1.0, -0.4}};
    return design;
}

/// Two pins, both holes off the mid-line, and a step in the belly.
inline Design godwit() {
    Design design = heron();
    design.spring.thickness = {{-38.0, 3.2}, {4.0, 3.8}, {9.0, 3.4}, {9.0, 2.9}, {36.5, 2.3}};
    design.spring.holes = {{-34.0, 1.8, -0.4, backspring::HoleFor::rear_pin},
                           {0.0, 2.2, 0.4, backspring::HoleFor::middle_pin}};
    return design;
}

/// The pad begins ahead of the open face's rear corner, so its rear edge bears.
inline Design snipe() {
    Design design = heron();
    design.own().pad.start_mm = 28.6;
    return design;
}

/// The pad ends behind the corner that comes round ahead of the pivot, so its front edge bears.
inline Design avocet() {
    Design design = heron();
    design.own().pad.end_mm = 35.2;
    design.spring.thickness.back() = {35.2, 2.5};
    return design;
}

/// Arched behind the pad, its stock tapering, its sides relieved ahead of the middle pin.
inline Design twite() {
    Design design = heron();
    design.spring.mid_line = {{-34.0, 0.0}, {-20.0, 1.6}, {-2.0, 2.6},
                              {6.0, 2.6},   {17.0, 1.3},  {27.0, 0.0}};
    design.spring.widths = {{-38.0, 2.4}, {4.0, 2.3}, {4.0, 2.2}, {23.0, 2.15}, {36.5, 2.25}};
    design.spring.width_mm = backspring::width_at_mm(design.spring, 0.0);
    return design;
}

struct Named {
    std::string name;
    Design design;
};

struct Point {
    double x, y;
};

inline backspring::Joint joint_of(const backspring::Design& design) {
    return backspring::make_joint(design.spring, design.own().pad, design.own().tang,
                                  design.own().fit);
}

inline constexpr std::array kGrindFaces{backspring::GrindFace::back, backspring::GrindFace::belly,
                                        backspring::GrindFace::pad};

inline std::vector<Named> all() {
    return {{"heron", heron()},   {"plover", plover()}, {"wren", wren()},
            {"dunlin", dunlin()}, {"curlew", curlew()}, {"godwit", godwit()},
            {"snipe", snipe()},   {"avocet", avocet()}, {"twite", twite()}};
}

}  // namespace designs

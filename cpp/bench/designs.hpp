#pragma once

#include <algorithm>
#include <vector>

#include "backspring/design/design.hpp"
#include "backspring/tolerance/spread.hpp"

// Designs for the benchmarks, as in data/designs: all patterns are invented.
namespace bench {

inline constexpr backspring::Band kPlainCarbonYieldRatio{.value = 0.85, .low = 0.80, .high = 0.92};

/// A tapered belly, two pin holes and friction; stays elastic.
inline backspring::Design heron() {
    backspring::Design design;
    design.spring.thickness = {{-38.0, 3.2}, {-4.0, 3.8}, {0.0, 3.8},
                               {7.0, 3.1},   {25.0, 2.4}, {36.5, 2.5}};
    design.spring.width_mm = 2.3;
    design.spring.support.rear_pin_mm = 34.0;
    design.spring.holes = {{0.0, 2.0, 0.0, backspring::HoleFor::middle_pin},
                           {-34.0, 2.0, 0.0, backspring::HoleFor::rear_pin}};
    design.own().pad = {.start_mm = 27.0, .end_mm = 36.5};
    design.strength = backspring::strength_from_hardness(45.0, kPlainCarbonYieldRatio);
    design.hardness.spring_hrc = 45.0;
    design.own().tang = {.pivot_mm = 32.0,
                         .open_mm = 4.5,
                         .half_stop_mm = 4.62,
                         .closed_mm = 4.6,
                         .corner_open_mm = 0.7,
                         .corner_closed_mm = 0.7,
                         .front_mm = 5.0,
                         .round_end_mm = {},
                         .kick = {}};
    design.own().fit = {.preload_mm = 0.9, .dial_mm = 33.5};
    design.own().blade.nail_nick_mm = 35.0;
    design.own().blade.inertia_kg_mm2 = 52.0;
    design.own().blade.length_mm = 80.0;
    design.own().blade.edge_clearance_mm = 0.8;
    design.friction = {.spring = 0.12, .pivot = 0.12, .pivot_pin_mm = 3.2};
    return design;
}

/// Bears on a kick as well; stays elastic.
inline backspring::Design osprey() {
    backspring::Design design = heron();
    design.spring.thickness = {{-46.0, 4.0}, {-5.0, 5.0}, {5.0, 4.9}, {33.0, 3.1}, {51.5, 3.0}};
    design.spring.width_mm = 3.0;
    design.spring.support.rear_pin_mm = 40.0;
    design.spring.holes = {{0.0, 2.5, 0.0, backspring::HoleFor::middle_pin},
                           {-40.0, 2.0, 0.0, backspring::HoleFor::rear_pin}};
    design.own().pad = {.start_mm = 34.5, .end_mm = 51.5};
    design.strength = backspring::strength_from_hardness(48.0, kPlainCarbonYieldRatio);
    design.hardness.spring_hrc = 48.0;
    design.own().tang = {
        .pivot_mm = 46.0,
        .open_mm = 5.5,
        .half_stop_mm = 5.58,
        .closed_mm = 5.45,
        .corner_open_mm = 0.9,
        .corner_closed_mm = 0.8,
        .front_mm = 6.0,
        .round_end_mm = {},
        .kick = backspring::Kick{.distance_mm = 7.0, .height_mm = 0.3, .radius_mm = 0.6}};
    design.own().fit = {.preload_mm = 1.0, .dial_mm = 47.0};
    return design;
}

/// Heron with too much preload and too soft a temper: it yields over the crest.
inline backspring::Design bittern() {
    backspring::Design design = heron();
    design.spring.thickness = {{-38.0, 3.2}, {-4.0, 3.8}, {0.0, 3.8},
                               {7.0, 3.3},   {25.0, 2.8}, {36.5, 2.8}};
    design.strength = backspring::strength_from_hardness(42.0, kPlainCarbonYieldRatio);
    design.hardness.spring_hrc = 42.0;
    design.own().hardness_hrc = 60.0;
    design.surface.kink_radius_mm = 3.0;
    design.own().tang.half_stop_mm = 4.56;
    design.own().tang.closed_mm = 4.55;
    design.own().tang.corner_open_mm = design.own().tang.corner_closed_mm = 0.5;
    design.own().fit.preload_mm = 1.2;
    return design;
}

/// Heron with a second blade beside the first.
inline backspring::Design two_blades() {
    backspring::Design design = heron();
    design.own().name = "main";
    design.own().stands = backspring::Stand::closed;
    backspring::Blade pen = design.own();
    pen.name = "pen";
    pen.tang.half_stop_mm = 4.6;
    design.blades.push_back(pen);
    return design;
}

/// A design with as many stations, on the same outline.
inline backspring::Design with_stations(backspring::Design design, int count) {
    const backspring::Profile drawn = design.spring.thickness;
    const double from = drawn.front().x_mm, way = drawn.back().x_mm - from;
    for (int i = 1; i < count; ++i) {
        const double x = from + way * (i + 0.37) / (count + 1);
        design.spring.thickness.push_back({x, backspring::thickness_mm(drawn, x)});
    }
    std::ranges::sort(design.spring.thickness, {}, &backspring::Station::x_mm);
    return design;
}

/// Eight dimensions that a shop spreads.
inline std::vector<backspring::Spread> spreads() {
    using backspring::SpreadKind;
    return {{.key = "fit.preload", .kind = SpreadKind::normal, .size = 0.02},
            {.key = "spring.thickness_offset", .kind = SpreadKind::normal, .size = 0.01},
            {.key = "spring.width", .kind = SpreadKind::normal, .size = 0.01},
            {.key = "spring.rear_pin", .kind = SpreadKind::normal, .size = 0.03},
            {.key = "tang.pivot", .kind = SpreadKind::normal, .size = 0.03},
            {.key = "tang.half_stop", .kind = SpreadKind::normal, .size = 0.01},
            {.key = "tang.corner_radius", .kind = SpreadKind::uniform, .size = 0.05},
            {.key = "spring.yield", .kind = SpreadKind::normal, .size = 30.0}};
}

}  // namespace bench

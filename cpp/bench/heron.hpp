#pragma once

#include "backspring/design/design.hpp"

/// An invented pattern with a tapered belly, two pin holes and friction.
inline backspring::Design heron() {
    backspring::Design design;
    design.spring.thickness = {{-38.0, 3.2}, {-4.0, 3.8}, {0.0, 3.8},
                               {7.0, 3.1},   {25.0, 2.4}, {36.5, 2.5}};
    design.spring.width_mm = 2.3;
    design.spring.support.rear_pin_mm = 34.0;
    design.spring.holes = {{.center_mm = 0.0, .diameter_mm = 2.0},
                           {.center_mm = -34.0, .diameter_mm = 2.0}};
    design.spring.pad = {.start_mm = 27.0, .end_mm = 36.5};
    design.strength =
        backspring::strength_from_hardness(45.0, {.value = 0.85, .low = 0.80, .high = 0.92});
    design.tang = {.pivot_mm = 32.0,
                   .open_mm = 4.5,
                   .half_stop_mm = 4.62,
                   .closed_mm = 4.6,
                   .corner_open_mm = 0.7,
                   .corner_closed_mm = 0.7,
                   .front_mm = 5.0,
                   .round_end_mm = {},
                   .kick = {}};
    design.fit = {.preload_mm = 0.9, .dial_mm = 33.5};
    design.blade.nail_nick_mm = 35.0;
    design.friction = {.spring = 0.12, .pivot = 0.12, .pivot_pin_mm = 3.2};
    return design;
}

#pragma once

#include "designs.hpp"

/// A frictionless round end so full that the torque is greatest where its arc first takes the
/// spring, just off the closed rest: a corner of the curve.
inline backspring::Design full_round() {
    backspring::Design design = designs::heron();
    design.own().tang.half_stop_mm.reset();
    design.own().tang.corner_open_mm = design.own().tang.corner_closed_mm = 3.9;
    design.friction = {};
    return design;
}

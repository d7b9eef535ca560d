#pragma once

#include <vector>

#include "backspring/spring/hole.hpp"
#include "backspring/spring/profile.hpp"
#include "backspring/spring/section.hpp"
#include "backspring/spring/support.hpp"
#include "backspring/steel/elastic.hpp"

namespace backspring {

/// The face of the spring that a tang can touch.
struct Pad {
    double start_mm = 0.0;  ///< rear edge [mm]
    double end_mm = 0.0;    ///< front edge, the spring's end [mm]
};

/// How much wider the holes are than their pins, which load takes up on one side.
struct PinClearance {
    double middle_mm = 0.0;  ///< hole less pin, across [mm]
    double rear_mm = 0.0;    ///< [mm]
};

/// The spring as a beam: shape, hold and stiffness of its steel.
struct Spring {
    Profile thickness;                ///< thickness by station
    double width_mm = 0.0;            ///< across the liners, constant [mm]
    Support support;                  ///< how it is held
    std::vector<Hole> holes;          ///< pin holes
    Elastic elastic;                  ///< Young's modulus and Poisson's ratio
    PinClearance pin_clearance = {};  ///< of middle and rear pin
};

/// The same spring seen from its other end.
///
/// Stations run the other way from the rear pin, with two pins, or else from the middle pin. With
/// two pins the middle one is then the one that was the rear one, clearance and all.
[[nodiscard]] Spring turned_round(const Spring& spring);

/// Station from which nothing of the section changes any more, ahead of the middle pin or at it.
///
/// Behind it lie all stations and holes; ahead of it the end's thickness goes on.
[[nodiscard]] double last_change_mm(const Spring& spring);

/// Net section at a station.
[[nodiscard]] Section section_at(const Spring& spring, double x_mm);

}  // namespace backspring

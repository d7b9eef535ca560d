#pragma once

#include <vector>

#include "backspring/spring/hole.hpp"
#include "backspring/spring/mid_line.hpp"
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
///
/// Thickness is measured square to x. Where the mid-line leans by alpha the steel is t cos(alpha)
/// thick and dx/cos(alpha) long.
struct Spring {
    Profile thickness;                ///< thickness by station
    double width_mm = 0.0;            ///< across the liners, with `widths` at the middle pin [mm]
    Support support;                  ///< how it is held
    std::vector<Hole> holes;          ///< pin holes
    Elastic elastic;                  ///< Young's modulus and Poisson's ratio
    PinClearance pin_clearance = {};  ///< of middle and rear pin
    WidthProfile widths = {};         ///< width by station; none: even all along
    MidLine mid_line = {};            ///< of a curved spring; none: straight along the pad
};

/// Width at a station.
///
/// @returns  [mm]
[[nodiscard]] double width_at_mm(const Spring& spring, double x_mm);

/// The same spring with another width at the middle pin; widths by station keep their shape.
[[nodiscard]] Spring with_width(Spring spring, double width_mm);

/// Height of the unbent mid-line above the face of the pad: lever of a force along the pad.
///
/// At the pad's middle it is half the thickness, and elsewhere differs from that as the mid-line
/// given does. Where none is given the belly is straight: half the thickness all along.
///
/// @returns  [mm]
[[nodiscard]] double mid_line_mm(const Spring& spring, const Pad& pad, double x_mm);

/// Height of the unbent belly above the face of the pad.
///
/// @returns  [mm], 0 where no mid-line is given: the belly is then drawn straight
[[nodiscard]] double belly_mm(const Spring& spring, const Pad& pad, double x_mm);

/// Cosine of the mid-line's lean at a station: 1 on a straight spring.
[[nodiscard]] double lean_cosine(const Spring& spring, double x_mm);

/// The same spring seen from its other end.
///
/// Stations run the other way from the rear pin, with two pins, or else from the middle pin. With
/// two pins the middle one is then the one that was the rear one, clearance and all.
[[nodiscard]] Spring turned_round(const Spring& spring);

/// Station from which nothing of the section changes any more, ahead of the middle pin or at it.
///
/// Behind it lie all stations and holes; ahead of it the end's thickness goes on.
[[nodiscard]] double last_change_mm(const Spring& spring);

/// Net section at a station, square to the mid-line.
[[nodiscard]] Section section_at(const Spring& spring, double x_mm);

}  // namespace backspring

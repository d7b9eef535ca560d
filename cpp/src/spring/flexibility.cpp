#include "backspring/spring/flexibility.hpp"

#include <algorithm>
#include <limits>

#include "backspring/spring/stretches.hpp"
#include "overhang.hpp"
#include "stretch_integrals.hpp"

namespace backspring {
namespace {

// Moves the origin of a stretch's integrals to the middle pin and brings in the steel and width.
BendingIntegrals from_middle_pin(const BendingIntegrals& shape,
                                 double start_mm,
                                 double bending_factor,
                                 double shear_factor) {
    const double f = bending_factor * (1.0 / 12.0);
    return {.a0 = f * shape.a0,
            .a1 = f * (shape.a1 + start_mm * shape.a0),
            .a2 = f * (shape.a2 + start_mm * (2.0 * shape.a1 + start_mm * shape.a0)),
            .shear = shear_factor * shape.shear};
}

BendingIntegrals operator+(const BendingIntegrals& a, const BendingIntegrals& b) {
    return {a.a0 + b.a0, a.a1 + b.a1, a.a2 + b.a2, a.shear + b.shear};
}

using KnownStretches = std::span<const WholeStretch>;

bool alike(const Stretch& a, const Stretch& b) {
    return a.start_mm == b.start_mm && a.end_mm == b.end_mm && a.thickness_mm == b.thickness_mm &&
           a.taper == b.taper && a.hole.center_mm == b.hole.center_mm &&
           a.hole.diameter_mm == b.hole.diameter_mm && a.hole.offset_mm == b.hole.offset_mm &&
           a.width_share == b.width_share && a.width_taper == b.width_taper &&
           a.cosine == b.cosine && a.axial_share == b.axial_share;
}

/// Over all of a stretch, from its start.
BendingIntegrals whole_of(const Stretch& stretch, KnownStretches known) {
    for (const WholeStretch& each : known) {
        if (alike(each.stretch, stretch)) return each.shape;
    }
    return shape_integrals(stretch, stretch.end_mm);
}

/// Integrals over the span between the pins, from the rear pin.
BendingIntegrals across_rear_span(const Spring& spring,
                                  double bending_factor,
                                  double shear_factor,
                                  KnownStretches known = {}) {
    const double span = spring.support.rear_pin_mm;
    BendingIntegrals rear;
    for (const Stretch& stretch : cut_into_stretches(spring, -span, 0.0)) {
        rear = rear + from_middle_pin(whole_of(stretch, known), stretch.start_mm + span,
                                      bending_factor, shear_factor);
    }
    return rear;
}

double root_rotation(const Spring& spring,
                     double bending_factor,
                     double shear_factor,
                     KnownStretches known) {
    switch (spring.support.kind) {
        case SupportKind::clamped:
            return 0.0;
        case SupportKind::root_stiffness:
            return 1.0 / spring.support.root_stiffness_nmm_per_rad;
        case SupportKind::two_pins:
            break;
    }
    const double span = spring.support.rear_pin_mm;
    const BendingIntegrals rear = across_rear_span(spring, bending_factor, shear_factor, known);
    return (rear.a2 + rear.shear) / (span * span);
}

double bending_factor_of(const Spring& spring) {
    return 12.0 / (spring.elastic.youngs_modulus_mpa * spring.width_mm);
}

double shear_factor_of(const Spring& spring) {
    return 1.0 / (kShearFactor * shear_modulus_mpa(spring.elastic) * spring.width_mm);
}

BendingIntegrals upto(const Flexibility& flexibility, const Stretch& stretch, double x_mm) {
    return stretch.upto + from_middle_pin(shape_integrals(stretch, x_mm), stretch.start_mm,
                                          flexibility.bending_factor, flexibility.shear_factor);
}

/// By what is known of the nearer of two stations.
Compliance between(const Flexibility& flexibility,
                   const BeamPlace& nearer,
                   double x_mm,
                   double xi_mm) {
    const BendingIntegrals& i = nearer.upto;
    const double turn = i.a0 + flexibility.root_rotation_rad_per_nmm;
    const double shear_share = x_mm > xi_mm ? 0.0 : x_mm < xi_mm ? 1.0 : 0.5;
    return {.mm_per_n = x_mm * xi_mm * turn - (x_mm + xi_mm) * i.a1 + i.a2 + i.shear,
            .rad_per_n = xi_mm * turn - i.a1 + shear_share * nearer.shear_rad_per_n};
}

}  // namespace

Flexibility make_flexibility(const Spring& spring) { return flexibility_from({}, spring); }

std::vector<WholeStretch> whole_stretches(const Spring& spring) {
    std::vector<WholeStretch> all;
    const auto add = [&](double from, double to) {
        for (const Stretch& stretch : cut_into_stretches(spring, from, to)) {
            all.push_back({stretch, shape_integrals(stretch, stretch.end_mm)});
        }
    };
    if (spring.support.kind == SupportKind::two_pins) add(-spring.support.rear_pin_mm, 0.0);
    add(0.0, last_change_mm(spring));
    return all;
}

Flexibility flexibility_from(std::span<const WholeStretch> known, const Spring& spring) {
    Flexibility result;
    result.bending_factor = bending_factor_of(spring);
    result.shear_factor = shear_factor_of(spring);
    result.root_rotation_rad_per_nmm =
        root_rotation(spring, result.bending_factor, result.shear_factor, known);
    const double end_mm = last_change_mm(spring);
    result.stretches = cut_into_stretches(spring, 0.0, end_mm);
    BendingIntegrals upto;
    for (Stretch& stretch : result.stretches) {
        stretch.upto = upto;
        upto = upto + from_middle_pin(whole_of(stretch, known), stretch.start_mm,
                                      result.bending_factor, result.shear_factor);
    }
    // A tang may bear ahead of it, and contact search look past the spring's end.
    result.stretches.push_back({.start_mm = end_mm,
                                .end_mm = std::numeric_limits<double>::infinity(),
                                .thickness_mm = thickness_mm(spring.thickness, end_mm),
                                .taper = 0.0,
                                .hole = {},
                                .upto = upto,
                                .width_share = width_at_mm(spring, end_mm) / spring.width_mm});
    return result;
}

double cross_rotation_rad_per_nmm(const Spring& spring) {
    const double span = spring.support.rear_pin_mm;
    const BendingIntegrals i =
        across_rear_span(spring, bending_factor_of(spring), shear_factor_of(spring));
    return (span * i.a1 - i.a2 - i.shear) / (span * span);
}

Flexibility free_rotation() {
    Flexibility result;
    result.stretches.push_back({.start_mm = 0.0,
                                .end_mm = std::numeric_limits<double>::infinity(),
                                .thickness_mm = 1.0,
                                .taper = 0.0,
                                .hole = {},
                                .upto = {}});
    result.root_rotation_rad_per_nmm = 1.0;
    return result;
}

BendingIntegrals bending_integrals(const Flexibility& flexibility, double x_mm) {
    require_overhang(x_mm);
    return upto(flexibility, stretch_at(flexibility, x_mm), x_mm);
}

BeamPlace beam_place(const Flexibility& flexibility, double x_mm) {
    require_overhang(x_mm);
    const Stretch& stretch = stretch_at(flexibility, x_mm);
    return {.x_mm = x_mm,
            .upto = upto(flexibility, stretch, x_mm),
            .shear_rad_per_n = flexibility.shear_factor / shear_depth_mm(stretch, x_mm)};
}

Compliance compliance(const Flexibility& flexibility, double x_mm, double xi_mm) {
    return between(flexibility, beam_place(flexibility, std::min(x_mm, xi_mm)), x_mm, xi_mm);
}

Compliance compliance(const Flexibility& flexibility,
                      const BeamPlace& moves,
                      const BeamPlace& pressed) {
    const BeamPlace& nearer = moves.x_mm < pressed.x_mm ? moves : pressed;
    return between(flexibility, nearer, moves.x_mm, pressed.x_mm);
}

Compliance compliance(const Flexibility& flexibility, const BeamPlace& moves, double xi_mm) {
    if (moves.x_mm <= xi_mm) return between(flexibility, moves, moves.x_mm, xi_mm);
    return compliance(flexibility, moves, beam_place(flexibility, xi_mm));
}

double deflection_per_force(const Flexibility& flexibility, double x_mm, double xi_mm) {
    return compliance(flexibility, x_mm, xi_mm).mm_per_n;
}

double slope_per_force(const Flexibility& flexibility, double x_mm, double xi_mm) {
    return compliance(flexibility, x_mm, xi_mm).rad_per_n;
}

}  // namespace backspring

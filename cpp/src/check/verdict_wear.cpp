#include <cmath>

#include "backspring/steel/hardness.hpp"
#include "backspring/strength/bearing_pressure.hpp"
#include "verdict_parts.hpp"

namespace backspring {
namespace {

const char* part_name(Bearer bearer) {
    switch (bearer) {
        case Bearer::open_front:
            return "the open face's front edge";
        case Bearer::open_corner:
            return "the corner behind the open face";
        case Bearer::round_end:
            return "the round end";
        case Bearer::closed_corner:
            return "the corner behind the closed face";
        case Bearer::closed_front:
            return "the closed face's front edge";
        case Bearer::kick:
            return "the kick's nose";
        case Bearer::flat:
            return "a face";
        case Bearer::pad_edge:
            return "the pad's edge";
    }
    return "";
}

/// Yield stress of the softer of tang and spring; the tang's from its hardness where it is known.
double softer_yield_mpa(const Design& design) {
    const double spring = design.strength.yield_mpa.value;
    const auto& tang = design.hardness.tang_hrc;
    const auto& own = design.hardness.spring_hrc;
    if (!tang || !own || *tang >= *own) return spring;
    return spring * vickers_hv(*tang) / vickers_hv(*own);
}

void judge_pressure(std::vector<Margin>& margins, const Design& design, const Worked& worked) {
    const Elastic& steel = design.spring.elastic;
    const double limit = first_yield_pressure_mpa(softer_yield_mpa(design));
    const double modulus = contact_modulus_mpa(steel, steel);
    const BearingPressure* worst = nullptr;
    const auto all =
        bearing_pressures(worked.action.joint, worked.steps, design.spring.width_mm, modulus);
    for (const BearingPressure& each : all) {
        if (each.line && (!worst || each.line->peak_mpa > worst->line->peak_mpa)) worst = &each;
    }
    if (!worst) return;
    Margin margin = make_margin("contact-pressure", worst->line->peak_mpa, limit, "MPa");
    margin.station_mm = worst->station_mm;
    margin.blade_angle_deg = worst->blade_angle_deg;
    margin.sources = {"hertz-1881"};
    margin.sentence = std::string(part_name(worst->bearer)) + " presses with up to " +
                      digits(worst->line->peak_mpa) + " MPa";
    if (margin.margin < 1.0) {
        const double radius =
            least_corner_radius_mm(worst->force_n, design.spring.width_mm, modulus, limit);
        margin.sentence += ": it beds in and marks the pad; from a radius of " + digits(radius) +
                           " mm on it would not";
    } else {
        margin.sentence += ": it stays below yielding under the skin";
    }
    margins.push_back(std::move(margin));
}

void judge_galling(std::vector<Margin>& margins, const Design& design) {
    const auto& tang = design.hardness.tang_hrc;
    const auto& spring = design.hardness.spring_hrc;
    if (!tang || !spring) return;
    const double gap = std::abs(*tang - *spring);
    Margin margin = make_margin("galling", gap, kGallingGapHrc, "HRC");
    margin.sources = {"common-practice"};
    margin.sentence =
        "tang and spring are " + digits(gap) + " HRC apart" +
        (galling_caution(*tang, *spring) ? ": stainless parts so far apart are said to gall"
                                         : ": close enough not to gall, as the trade has it");
    margins.push_back(std::move(margin));
}

void add_pin(std::vector<Margin>& margins,
             const std::string& name,
             const std::string& what,
             const LimitedStress& stress,
             double angle_deg) {
    Margin margin = make_margin(name, stress.stress_mpa, stress.limit_mpa, "MPa");
    margin.blade_angle_deg = angle_deg;
    margin.sources = {"shigley-9"};
    margin.sentence =
        what + " carries " + digits(stress.stress_mpa) + " MPa of " + digits(stress.limit_mpa);
    margins.push_back(std::move(margin));
}

void judge_pin(std::vector<Margin>& margins,
               const Design& design,
               const std::string& which,
               double force_n,
               double angle_deg,
               const std::optional<double>& pin_mm,
               double hole_mm) {
    const double diameter = pin_mm.value_or(hole_mm);
    if (diameter <= 0.0) return;
    const PinStress stress = pin_stress({.force_n = force_n,
                                         .pin_mm = diameter,
                                         .spring_width_mm = design.spring.width_mm,
                                         .liner_mm = design.pins.liner_mm,
                                         .pin_yield_mpa = design.pins.yield_mpa,
                                         .spring_yield_mpa = design.strength.yield_mpa.value});
    add_pin(margins, which + "-pin-shear", "the " + which + " pin in shear", stress.shear,
            angle_deg);
    add_pin(margins, which + "-pin-bearing", "the " + which + " pin's side in the spring",
            stress.spring_bearing, angle_deg);
    if (stress.liner_bearing) {
        add_pin(margins, which + "-pin-liner", "the liner at the " + which + " pin",
                *stress.liner_bearing, angle_deg);
    }
}

double hole_at(const Spring& spring, double center_mm) {
    for (const Hole& hole : spring.holes) {
        if (hole.center_mm == center_mm) return hole.diameter_mm;
    }
    return 0.0;
}

void judge_pins(std::vector<Margin>& margins, const Design& design, const Worked& worked) {
    const auto worst = worst_pin_forces(design.spring, worked.steps);
    if (!worst) return;
    const double rear_pin = -design.spring.support.rear_pin_mm;
    judge_pin(margins, design, "middle", worst->forces.middle_n, worst->middle_angle_deg,
              design.pins.middle_mm, hole_at(design.spring, 0.0));
    judge_pin(margins, design, "rear", worst->forces.rear_n, worst->rear_angle_deg,
              design.pins.rear_mm, hole_at(design.spring, rear_pin));
}

}  // namespace

void judge_wear(std::vector<Margin>& margins, const Design& design, const Worked& worked) {
    judge_pressure(margins, design, worked);
    judge_galling(margins, design);
    judge_pins(margins, design, worked);
}

}  // namespace backspring

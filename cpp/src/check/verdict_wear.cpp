#include <cmath>

#include "backspring/design/joint_of.hpp"
#include "backspring/steel/hardness.hpp"
#include "backspring/strength/bearing_pressure.hpp"
#include "verdict_parts.hpp"

namespace backspring {
namespace {

/// The fixed name of what bears.
const char* name_of(Bearer bearer) {
    switch (bearer) {
        case Bearer::open_front:
            return "open-front";
        case Bearer::open_corner:
            return "open-corner";
        case Bearer::round_end:
            return "round-end";
        case Bearer::closed_corner:
            return "closed-corner";
        case Bearer::closed_front:
            return "closed-front";
        case Bearer::kick:
            return "kick";
        case Bearer::flat:
            return "flat";
        case Bearer::pad_edge:
            return "pad-edge";
    }
    return "";
}

/// Yield stress of the softer of tang and spring; the tang's from its hardness where it is known.
double softer_yield_mpa(const Design& design) {
    const double spring = design.strength.yield_mpa.value;
    const auto& tang = design.own().hardness_hrc;
    const auto& own = design.hardness.spring_hrc;
    if (!tang || !own || *tang >= *own) return spring;
    return spring * vickers_hv(*tang) / vickers_hv(*own);
}

void judge_pressure(std::vector<Margin>& margins, const Design& design, const Worked& worked) {
    const Elastic& steel = design.spring.elastic;
    const double limit = first_yield_pressure_mpa(softer_yield_mpa(design));
    const double modulus = contact_modulus_mpa(steel, steel);
    const auto worst = worst_bearing_pressure(worked.travel, bearing_width_mm(design), modulus);
    if (!worst) return;
    Margin margin =
        make_margin(MarginKind::contact_pressure, worst->line->peak_mpa, limit, Quantity::stress);
    margin.station_mm = worst->station_mm;
    margin.blade_angle_deg = worst->blade_angle_deg;
    margin.sources = {"hertz-1881"};
    margin.names["bearer"] = name_of(worst->bearer);
    if (margin.margin < 1.0) {
        const double radius =
            least_corner_radius_mm(worst->force_n, bearing_width_mm(design), modulus, limit);
        margin.parameters = {{"least_radius", radius, Quantity::length}};
    }
    margins.push_back(std::move(margin));
}

/// Told of stainless steel on stainless steel alone.
void judge_galling(std::vector<Margin>& margins, const Design& design) {
    if (!design.own().stainless || design.surface.steel != SpringSteel::stainless) return;
    const auto& tang = design.own().hardness_hrc;
    const auto& spring = design.hardness.spring_hrc;
    if (!tang || !spring) return;
    const double gap = std::abs(*tang - *spring);
    Margin margin = make_margin(MarginKind::galling, gap, kGallingGapHrc, Quantity::hardness);
    margin.sources = {"common-practice"};
    margin.names["galls"] = galling_caution(*tang, *spring) ? "yes" : "no";
    margins.push_back(std::move(margin));
}

void add_pin(std::vector<Margin>& margins,
             MarginKind kind,
             const LimitedStress& stress,
             double angle_deg) {
    Margin margin = make_margin(kind, stress.stress_mpa, stress.limit_mpa, Quantity::stress);
    margin.blade_angle_deg = angle_deg;
    margin.sources = {"shigley-9"};
    margins.push_back(std::move(margin));
}

/// The kinds of one pin's margins.
struct PinKinds {
    MarginKind shear, bearing, liner;
};

/// What the pins press on, where either table says.
std::optional<double> liner_mm(const Design& design) {
    return design.pins.liner_mm ? design.pins.liner_mm : design.frame.liner_thickness_mm;
}

void judge_pin(std::vector<Margin>& margins,
               const Design& design,
               const PinKinds& kinds,
               double force_n,
               double angle_deg,
               const std::optional<double>& pin_mm,
               double hole_mm) {
    const double diameter = pin_mm.value_or(hole_mm);
    if (diameter <= 0.0) return;
    const PinStress stress = pin_stress({.force_n = force_n,
                                         .pin_mm = diameter,
                                         .spring_width_mm = design.spring.width_mm,
                                         .liner_mm = liner_mm(design),
                                         .pin_yield_mpa = design.pins.yield_mpa,
                                         .spring_yield_mpa = design.strength.yield_mpa.value});
    add_pin(margins, kinds.shear, stress.shear, angle_deg);
    add_pin(margins, kinds.bearing, stress.spring_bearing, angle_deg);
    if (stress.liner_bearing) add_pin(margins, kinds.liner, *stress.liner_bearing, angle_deg);
}

double hole_mm(const Spring& spring, HoleFor pin) {
    const Hole* hole = hole_for(pin, spring.holes);
    return hole ? hole->diameter_mm : 0.0;
}

void judge_pins(std::vector<Margin>& margins, const Design& design, const Worked& worked) {
    const auto worst = worst_pin_forces(design.spring, worked.travel);
    if (!worst) return;
    constexpr PinKinds middle{MarginKind::middle_pin_shear, MarginKind::middle_pin_bearing,
                              MarginKind::middle_pin_liner};
    constexpr PinKinds rear{MarginKind::rear_pin_shear, MarginKind::rear_pin_bearing,
                            MarginKind::rear_pin_liner};
    judge_pin(margins, design, middle, worst->forces.middle_n, worst->middle_angle_deg,
              design.pins.middle_mm, hole_mm(design.spring, HoleFor::middle_pin));
    judge_pin(margins, design, rear, worst->forces.rear_n, worst->rear_angle_deg,
              design.pins.rear_mm, hole_mm(design.spring, HoleFor::rear_pin));
}

}  // namespace

void detail::judge_wear(std::vector<Margin>& margins, const Design& design, const Worked& worked) {
    judge_pressure(margins, design, worked);
    judge_galling(margins, design);
    judge_pins(margins, design, worked);
}

}  // namespace backspring

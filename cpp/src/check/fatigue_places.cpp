#include "fatigue_places.hpp"

#include <algorithm>

#include "backspring/strength/notch_sensitivity.hpp"

namespace backspring {
namespace {

constexpr double kOpenings = 1e5;  // ten a day for 20 years is 0.73e5

FatiguePlace at_face(const Design& design) {
    const Surface& surface = design.surface;
    return {.notch = {},
            .finish = surface.finish,
            .residual_mpa = surface.residual_mpa,
            .soft_skin = surface.soft_skin_mm > 0.0};
}

FatiguePlace at_hole(const Design& design) {
    const Surface& surface = design.surface;
    // Whoever reams or polishes a hole does so after hardening, and the soft skin goes with it.
    const bool as_hardened = surface.hole_finish == HoleFinish::drilled;
    return {.notch = {},
            .finish = wall_finish(surface.hole_finish),
            .residual_mpa = surface.hole_residual_mpa,
            .soft_skin = as_hardened && surface.soft_skin_mm > 0.0};
}

}  // namespace

FatiguePlace detail::fatigue_place(const Design& design, const Notch& notch) {
    // A softer steel suffers less from a notch than one of this strength.
    constexpr double least_tensile_mpa = 340.0;
    const double tensile = std::max(design.strength.tensile_mpa.value, least_tensile_mpa);
    FatiguePlace place = notch.kind == MarginKind::hole_edge ? at_hole(design) : at_face(design);
    place.notch = notch.kind;
    place.station_mm = notch.local.station_mm;
    place.stress_mpa = notch.local.nominal_mpa;
    place.notch_factor =
        fatigue_notch_factor(notch.local.factor, notch_sensitivity(tensile, notch.root_radius_mm));
    return place;
}

std::vector<FatiguePlace> detail::fatigue_places(const Design& design,
                                                 const PeakStress& peak,
                                                 const std::vector<Notch>& notches) {
    FatiguePlace outer = at_face(design);
    outer.station_mm = peak.station_mm;
    outer.stress_mpa = peak.stress_mpa;
    std::vector<FatiguePlace> found{outer};
    for (const Notch& notch : notches) {
        if (notch.local.nominal_mpa > 0.0) found.push_back(fatigue_place(design, notch));
    }
    return found;
}

FatigueInput detail::Cycles::input(const FatiguePlace& place) {
    // Stress at one station goes with its moment, whichever fibre is meant.
    const StressRange range = worked_.ranges.at(place.station_mm);
    const double least =
        range.high_mpa > 0.0 ? place.stress_mpa * range.low_mpa / range.high_mpa : 0.0;
    return {.stress_max_mpa = place.stress_mpa,
            .stress_min_mpa = std::min(least, place.stress_mpa),
            .tensile_mpa = design_.strength.tensile_mpa,
            .yield_mpa = design_.strength.yield_mpa,
            .finish = place.finish,
            .residual_mpa = place.residual_mpa,
            .soft_skin = place.soft_skin,
            .width_mm = width_at_mm(design_.spring, place.station_mm),
            .thickness_mm = thickness_mm(design_.spring.thickness, place.station_mm),
            .notch_factor = place.notch_factor,
            .openings = judged_openings(design_),
            .strokes = static_cast<int>(std::max<std::size_t>(worked_.strokes.size(), 1)),
            .steel = design_.surface.steel};
}

const Band& detail::judging_margin(const Fatigue& fatigue) {
    return std::ranges::find(fatigue.margins, Criterion::swt, &FatigueMargin::criterion)->margin;
}

double detail::judged_openings(const Design& design) {
    return design.targets.openings.value_or(kOpenings);
}

}  // namespace backspring

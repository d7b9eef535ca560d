#include <cmath>

#include "backspring/strength/plastic_strain.hpp"
#include "verdict_parts.hpp"

namespace backspring {
namespace {

/// A place that is stretched for good.
struct Stretched {
    double strain = 0.0;
    double station_mm = 0.0;
    std::optional<MarginKind> notch;  ///< none for the outer fibre
    bool folds = false;
};

/// The fold whose deepest place lies in a hole or, without one, at a station.
const PlasticZone* fold_at(const std::optional<PlasticSet>& set, double x_mm, double reach_mm) {
    if (!set) return nullptr;
    for (const PlasticZone& zone : set->zones) {
        if (!zone.strain && std::abs(zone.deepest_mm - x_mm) <= reach_mm) return &zone;
    }
    return nullptr;
}

Stretched at_notch(const Design& design, const Notch& notch, const std::optional<PlasticSet>& set) {
    const double x = notch.local.station_mm;
    // Yielding, the spring bears less than it would elastic.
    const double borne = set && set->yielded ? set->force_n / set->elastic_force_n : 1.0;
    Stretched place{.strain = notch_plastic_strain(borne * notch.local.local_mpa,
                                                   design.strength.yield_mpa.value,
                                                   design.spring.elastic.youngs_modulus_mpa),
                    .station_mm = x,
                    .notch = notch.kind};
    if (notch.kind != MarginKind::hole_edge) return place;
    const double diameter = 2.0 * notch.root_radius_mm;
    if (const PlasticZone* fold = fold_at(set, x, notch.root_radius_mm)) {
        place.folds = true;
        place.strain +=
            fold_plastic_strain(fold->turn_rad, thickness_mm(design.spring.thickness, x), diameter);
    }
    return place;
}

Stretched at_face(const Design& design, const PlasticZone& zone) {
    Stretched place{
        .strain = 0.0, .station_mm = zone.deepest_mm, .notch = {}, .folds = !zone.strain};
    const double elastic =
        design.strength.yield_mpa.value / design.spring.elastic.youngs_modulus_mpa;
    place.strain = zone.strain ? *zone.strain - elastic
                               : fold_plastic_strain(
                                     zone.turn_rad,
                                     thickness_mm(design.spring.thickness, zone.deepest_mm), 0.0);
    return place;
}

Stretched most_stretched(const Design& design,
                         const std::vector<Notch>& notches,
                         const std::optional<PlasticSet>& set) {
    Stretched most;
    const auto consider = [&](const Stretched& place) {
        if (place.strain > most.strain) most = place;
    };
    for (const Notch& notch : notches) consider(at_notch(design, notch, set));
    if (!set) return most;
    for (const PlasticZone& zone : set->zones) consider(at_face(design, zone));
    return most;
}

}  // namespace

void detail::judge_strain(std::vector<Margin>& margins,
                          const Design& design,
                          const Worked& worked,
                          const std::vector<Notch>& notches,
                          const std::optional<PlasticSet>& set) {
    const double tensile = design.strength.tensile_mpa.value;
    const Stretched most = most_stretched(design, notches, set);
    if (most.strain <= 0.0 || tensile <= 0.0) return;
    const Band breaks = elongation(tensile);
    Margin margin = make_margin(MarginKind::strain, most.strain, breaks.value, Quantity::ratio);
    margin.margin_low = breaks.low / most.strain;
    margin.station_mm = most.station_mm;
    margin.blade_angle_deg = worked.worst.blade_angle_deg;
    margin.parameters = {{"elongation_low", breaks.low, Quantity::ratio},
                         {"elongation_high", breaks.high, Quantity::ratio}};
    if (most.notch) margin.names["notch"] = name_of(*most.notch);
    if (most.folds) margin.names["folds"] = "yes";
    margin.sources = {"neuber-1961", "plane-stress-study", "asm-5160", "asm-1090-bar"};
    margins.push_back(std::move(margin));
}

}  // namespace backspring

#include <algorithm>

#include "backspring/strength/fatigue.hpp"
#include "backspring/strength/notch_sensitivity.hpp"
#include "backspring/strength/stress_range.hpp"
#include "verdict_parts.hpp"

namespace backspring {
namespace {

constexpr double kOpenings = 1e5;  // ten a day for 20 years is 0.73e5

void set_place(Margin& margin, const Worked& worked, double station_mm) {
    margin.station_mm = station_mm;
    margin.blade_angle_deg = worked.worst.blade_angle_deg;
}

/// A life as a parameter; none where no limit is found.
void add_life(Margin& margin, const char* name, const std::optional<double>& openings) {
    if (openings) margin.parameters.push_back({name, *openings, Quantity::count});
}

const FatigueMargin& by(const Fatigue& fatigue, Criterion criterion) {
    return *std::find_if(fatigue.margins.begin(), fatigue.margins.end(),
                         [&](const auto& each) { return each.criterion == criterion; });
}

/// A place that may crack.
struct FatiguePlace {
    std::optional<MarginKind> notch;  ///< none for the outer fibre
    double station_mm;
    double stress_mpa;  ///< nominal, greatest of the travel
    double notch_factor;
};

/// The outer fibre where it is worst stressed, and every notch with the part of it that counts for
/// fatigue.
std::vector<FatiguePlace> places(const Design& design,
                                 const PeakStress& peak,
                                 const std::vector<Notch>& notches) {
    // A softer steel suffers less from a notch than one of this strength.
    constexpr double least_tensile_mpa = 340.0;
    std::vector<FatiguePlace> found{{std::nullopt, peak.station_mm, peak.stress_mpa, 1.0}};
    const double tensile = std::max(design.strength.tensile_mpa.value, least_tensile_mpa);
    for (const Notch& notch : notches) {
        if (notch.local.nominal_mpa <= 0.0) continue;
        const double effective = fatigue_notch_factor(
            notch.local.factor, notch_sensitivity(tensile, notch.root_radius_mm));
        found.push_back({notch.kind, notch.local.station_mm, notch.local.nominal_mpa, effective});
    }
    return found;
}

Fatigue fatigue_at(const Design& design,
                   const Worked& worked,
                   const FatiguePlace& place,
                   double openings) {
    // Stress at one station goes with its moment, whichever fibre is meant.
    const StressRange range = stress_range(design.spring, worked.steps, place.station_mm);
    const double least =
        range.high_mpa > 0.0 ? place.stress_mpa * range.low_mpa / range.high_mpa : 0.0;
    return fatigue({.stress_max_mpa = place.stress_mpa,
                    .stress_min_mpa = std::min(least, place.stress_mpa),
                    .tensile_mpa = design.strength.tensile_mpa,
                    .yield_mpa = design.strength.yield_mpa,
                    .finish = design.surface.finish,
                    .width_mm = width_at_mm(design.spring, place.station_mm),
                    .thickness_mm = thickness_mm(design.spring.thickness, place.station_mm),
                    .notch_factor = place.notch_factor,
                    .openings = openings,
                    .strokes = static_cast<int>(std::max<std::size_t>(worked.strokes.size(), 1)),
                    .steel = design.surface.steel});
}

[[nodiscard]] Margin fatigue_margin(const FatiguePlace& place,
                                    const Fatigue& fatigue,
                                    double openings) {
    const FatigueMargin& swt = by(fatigue, Criterion::swt);
    double low = swt.margin.low;
    for (const FatigueMargin& each : fatigue.margins) low = std::min(low, each.margin.low);
    Margin margin = make_margin(MarginKind::fatigue, fatigue.cycle.max_mpa(),
                                fatigue.cycle.max_mpa() * swt.margin.value, Quantity::stress);
    margin.margin_low = low;
    margin.sources = {"shigley-9", "dowling-2009"};
    margin.parameters.push_back({"openings", openings, Quantity::count});
    add_life(margin, "life", fatigue.life_openings.value);
    add_life(margin, "life_low", fatigue.life_openings.low);
    add_life(margin, "life_high", fatigue.life_openings.high);
    if (place.notch) {
        margin.names["notch"] = name_of(*place.notch);
        margin.parameters.push_back({"notch_factor", place.notch_factor, Quantity::ratio});
        margin.parameters.push_back({"nominal", place.stress_mpa, Quantity::stress});
    }
    return margin;
}

/// Spring makers' tables differ; the middle one judges and the strictest is the low end.
[[nodiscard]] Margin tables_margin(Fatigue fatigue) {
    auto& tables = fatigue.trade;
    std::sort(tables.begin(), tables.end(),
              [](const auto& a, const auto& b) { return a.margin.value < b.margin.value; });
    const TradeMargin& middle = tables[tables.size() / 2];
    const double stress = fatigue.cycle.max_mpa();
    Margin margin = make_margin(MarginKind::spring_trade, stress, stress * middle.margin.value,
                                Quantity::stress);
    margin.margin_low = tables.front().margin.low;
    for (const TradeMargin& each : tables) margin.sources.push_back(each.allowable.source);
    margin.parameters = {{"fraction_low", tables.front().allowable.fraction, Quantity::ratio},
                         {"fraction_high", tables.back().allowable.fraction, Quantity::ratio}};
    return margin;
}

}  // namespace

void detail::judge_life(std::vector<Margin>& margins,
                        const Design& design,
                        const Worked& worked,
                        const std::vector<Notch>& notches) {
    const PeakStress peak = peak_stress(worked.action, worked.worst);
    if (peak.stress_mpa <= 0.0 || design.strength.tensile_mpa.value <= 0.0) return;
    const double openings = design.targets.openings.value_or(kOpenings);
    std::optional<Margin> least;
    for (const FatiguePlace& place : places(design, peak, notches)) {
        const Fatigue found = fatigue_at(design, worked, place, openings);
        if (!place.notch) {
            // Spring makers' tables are read with the nominal stress.
            margins.push_back(tables_margin(found));
            set_place(margins.back(), worked, place.station_mm);
        }
        Margin margin = fatigue_margin(place, found, openings);
        set_place(margin, worked, place.station_mm);
        if (!least || margin.margin < least->margin) least = std::move(margin);
    }
    margins.push_back(std::move(*least));
}

}  // namespace backspring

#include <algorithm>

#include "backspring/strength/fatigue.hpp"
#include "backspring/strength/notch_sensitivity.hpp"
#include "backspring/strength/stress_range.hpp"
#include "verdict_parts.hpp"

namespace backspring {
namespace {

constexpr double kOpeningsAsked = 1e5;  // ten a day for 20 years is 0.73e5

void set_place(Margin& margin, const Worked& worked, double station_mm) {
    margin.station_mm = station_mm;
    margin.blade_angle_deg = worked.worst.blade_angle_deg;
}

std::string openings(const std::optional<double>& life) {
    return life ? digits(*life) : std::string("no end");
}

const FatigueMargin& by(const Fatigue& fatigue, Criterion criterion) {
    return *std::find_if(fatigue.margins.begin(), fatigue.margins.end(),
                         [&](const auto& each) { return each.criterion == criterion; });
}

/// A place that may crack.
struct FatiguePlace {
    std::string where;  ///< for a sentence; empty for the outer fibre
    double station_mm;
    double stress_mpa;  ///< nominal, greatest of the travel
    double notch_factor;
};

/// The outer fibre where it is worst stressed, and every notch with what fatigue feels of it.
std::vector<FatiguePlace> places(const Design& design,
                          const PeakStress& peak,
                          const std::vector<Notch>& notches) {
    // A softer steel feels less of a notch than one of this strength.
    constexpr double least_tensile_mpa = 340.0;
    std::vector<FatiguePlace> found{{"", peak.station_mm, peak.stress_mpa, 1.0}};
    const double tensile = std::max(design.strength.tensile_mpa.value, least_tensile_mpa);
    for (const Notch& notch : notches) {
        if (notch.local.nominal_mpa <= 0.0) continue;
        const double felt = fatigue_notch_factor(notch.local.factor,
                                                 notch_sensitivity(tensile, notch.root_radius_mm));
        found.push_back({notch.where, notch.local.station_mm, notch.local.nominal_mpa, felt});
    }
    return found;
}

Fatigue fatigue_at(const Design& design, const Worked& worked, const FatiguePlace& place, double asked) {
    // Stress at one station goes with its moment, whichever fibre is meant.
    const StressRange range = stress_range(design.spring, worked.steps, place.station_mm);
    const double least =
        range.high_mpa > 0.0 ? place.stress_mpa * range.low_mpa / range.high_mpa : 0.0;
    return fatigue({.stress_max_mpa = place.stress_mpa,
                    .stress_min_mpa = std::min(least, place.stress_mpa),
                    .tensile_mpa = design.strength.tensile_mpa,
                    .yield_mpa = design.strength.yield_mpa,
                    .finish = design.surface.finish,
                    .width_mm = design.spring.width_mm,
                    .thickness_mm = thickness_mm(design.spring.thickness, place.station_mm),
                    .notch_factor = place.notch_factor,
                    .openings = asked,
                    .strokes = static_cast<int>(std::max<std::size_t>(worked.strokes.size(), 1)),
                    .steel = design.surface.steel});
}

[[nodiscard]] Margin fatigue_margin(const FatiguePlace& place, const Fatigue& fatigue, double asked) {
    const FatigueMargin& swt = by(fatigue, Criterion::swt);
    double low = swt.margin.low;
    for (const FatigueMargin& each : fatigue.margins) low = std::min(low, each.margin.low);
    Margin margin = make_margin("fatigue", fatigue.cycle.max_mpa(),
                                fatigue.cycle.max_mpa() * swt.margin.value, "MPa");
    margin.margin_low = low;
    margin.sources = {"shigley-9", "dowling-2009"};
    if (!place.where.empty()) {
        margin.sentence = place.where + " is felt as " + digits(place.notch_factor) + " times " +
                          digits(place.stress_mpa) + " MPa; ";
    }
    margin.sentence +=
        "for " + digits(asked) + " openings the stress could be " + digits(swt.margin.value) +
        " times as high (" + digits(low) + " by the most cautious rule); expected life " +
        openings(fatigue.life_openings.value) + " openings, from " +
        openings(fatigue.life_openings.low) + " to " + openings(fatigue.life_openings.high);
    return margin;
}

/// The trade's tables differ; the middle one judges and the strictest is the low end.
[[nodiscard]] Margin trade_margin(Fatigue fatigue) {
    auto& tables = fatigue.trade;
    std::sort(tables.begin(), tables.end(),
              [](const auto& a, const auto& b) { return a.margin.value < b.margin.value; });
    const TradeMargin& middle = tables[tables.size() / 2];
    const double stress = fatigue.cycle.max_mpa();
    Margin margin = make_margin("spring-trade", stress, stress * middle.margin.value, "MPa");
    margin.margin_low = tables.front().margin.low;
    for (const TradeMargin& each : tables) margin.sources.push_back(each.allowable.source);
    margin.sentence =
        "tables of the spring trade allow " + digits(tables.front().allowable.fraction) + " to " +
        digits(tables.back().allowable.fraction) + " of the tensile strength for this life";
    return margin;
}

}  // namespace

void judge_life(std::vector<Margin>& margins,
                const Design& design,
                const Worked& worked,
                const std::vector<Notch>& notches) {
    const PeakStress peak = peak_stress(worked.action, worked.worst);
    if (peak.stress_mpa <= 0.0 || design.strength.tensile_mpa.value <= 0.0) return;
    const double asked = design.targets.openings.value_or(kOpeningsAsked);
    std::optional<Margin> least;
    for (const FatiguePlace& place : places(design, peak, notches)) {
        const Fatigue found = fatigue_at(design, worked, place, asked);
        if (place.where.empty()) {
            // The trade's tables are read with the nominal stress.
            margins.push_back(trade_margin(found));
            set_place(margins.back(), worked, place.station_mm);
        }
        Margin margin = fatigue_margin(place, found, asked);
        set_place(margin, worked, place.station_mm);
        if (!least || margin.margin < least->margin) least = std::move(margin);
    }
    margins.push_back(std::move(*least));
}

}  // namespace backspring

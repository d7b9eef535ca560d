#include <algorithm>

#include "backspring/strength/fatigue.hpp"
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

[[nodiscard]] Margin fatigue_margin(const Fatigue& fatigue, double asked) {
    const FatigueMargin& swt = by(fatigue, Criterion::swt);
    double low = swt.margin.low;
    for (const FatigueMargin& each : fatigue.margins) low = std::min(low, each.margin.low);
    Margin margin = make_margin("fatigue", fatigue.cycle.max_mpa(),
                                fatigue.cycle.max_mpa() * swt.margin.value, "MPa");
    margin.margin_low = low;
    margin.sources = {"shigley-9", "dowling-2009"};
    margin.sentence =
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

void judge_life(std::vector<Margin>& margins, const Design& design, const Worked& worked) {
    const PeakStress peak = peak_stress(worked.action, worked.worst);
    if (peak.stress_mpa <= 0.0 || design.strength.tensile_mpa.value <= 0.0) return;
    const StressRange range = stress_range(design.spring, worked.steps, peak.station_mm);
    const double asked = design.targets.openings.value_or(kOpeningsAsked);
    const Fatigue found =
        fatigue({.stress_max_mpa = peak.stress_mpa,
                 .stress_min_mpa = range.low_mpa,
                 .tensile_mpa = design.strength.tensile_mpa,
                 .yield_mpa = design.strength.yield_mpa,
                 .finish = design.surface.finish,
                 .width_mm = design.spring.width_mm,
                 .thickness_mm = thickness_mm(design.spring.thickness, peak.station_mm),
                 .openings = asked,
                 .strokes = static_cast<int>(std::max<std::size_t>(worked.strokes.size(), 1)),
                 .steel = design.surface.steel});
    for (Margin margin : {fatigue_margin(found, asked), trade_margin(found)}) {
        set_place(margin, worked, peak.station_mm);
        margins.push_back(std::move(margin));
    }
}

}  // namespace backspring

#include <algorithm>

#include "fatigue_places.hpp"

namespace backspring {
namespace {

// What a what-if presses into the skin, over the yield stress.
constexpr double kPeenedShare = 0.5;

void set_place(Margin& margin, const Worked& worked, double station_mm) {
    margin.station_mm = station_mm;
    margin.blade_angle_deg = worked.worst.blade_angle_deg;
}

double most_cautious(const Fatigue& fatigue) {
    double low = judging_margin(fatigue).low;
    for (const FatigueMargin& each : fatigue.margins) {
        if (tells_life(each.criterion)) low = std::min(low, each.margin.low);
    }
    return low;
}

void add_life(Margin& margin, const LifeBand& life, double openings) {
    margin.parameters.reserve(10);
    const auto add = [&](const char* name, double count) {
        margin.parameters.push_back({name, count, Quantity::count});
    };
    add("openings", openings);
    add("life", life.value);
    add("life_low", life.low);
    add("life_high", life.high);
    add("life_typical", life.typical);
}

/// What peening or burnishing would buy where nothing of the kind is stated.
void add_peened(Margin& margin, const Design& design, Cycles& cycles, FatiguePlace place) {
    // A soft skin does not hold what is pressed into it.
    if (place.residual_mpa != 0.0 || place.soft_skin) return;
    place.residual_mpa = -kPeenedShare * design.strength.yield_mpa.value;
    const auto peened = cycles.margin_at(place);
    if (!peened) return;
    margin.parameters.push_back({"peened", -place.residual_mpa, Quantity::stress});
    margin.parameters.push_back({"peened_margin", *peened, Quantity::ratio});
    margin.parameters.push_back({"peened_life", cycles.life_at(place), Quantity::count});
    margin.sources.insert(margin.sources.end(), {"mattson-roberts", "peening-half-yield"});
}

[[nodiscard]] Margin fatigue_margin(const FatiguePlace& place,
                                    const Fatigue& fatigue,
                                    double openings) {
    const double greatest = fatigue.cycle.max_mpa();
    Margin margin = make_margin(MarginKind::fatigue, greatest,
                                greatest * judging_margin(fatigue).value, Quantity::stress);
    margin.margin_low = most_cautious(fatigue);
    margin.sources = {"shigley-9", "dowling-2009"};
    add_life(margin, fatigue.life_openings, openings);
    if (place.notch) {
        margin.names["notch"] = name_of(*place.notch);
        margin.parameters.push_back({"notch_factor", place.notch_factor, Quantity::ratio});
        margin.parameters.push_back({"nominal", place.stress_mpa, Quantity::stress});
    }
    if (place.residual_mpa != 0.0) {
        margin.parameters.push_back({"residual", place.residual_mpa, Quantity::stress});
        margin.sources.emplace_back("mattson-roberts");
    }
    if (place.soft_skin) {
        margin.names["soft_skin"] = "yes";
        margin.sources.emplace_back("soft-skin-study");
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
    const double openings = judged_openings(design);
    Cycles cycles(design, worked);
    std::optional<Margin> least;
    std::optional<FatiguePlace> worst;
    for (const FatiguePlace& place : fatigue_places(design, peak, notches)) {
        const Fatigue found = cycles.at(place);
        if (!place.notch) {
            // Spring makers' tables are read with the nominal stress.
            margins.push_back(tables_margin(found));
            set_place(margins.back(), worked, place.station_mm);
        }
        Margin margin = fatigue_margin(place, found, openings);
        set_place(margin, worked, place.station_mm);
        if (!least || margin.margin < least->margin) {
            least = std::move(margin);
            worst = place;
        }
    }
    add_peened(*least, design, cycles, *worst);
    margins.push_back(std::move(*least));
}

}  // namespace backspring

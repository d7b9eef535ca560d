#include <algorithm>

#include "backspring/strength/plastic_set.hpp"
#include "backspring/strength/yielding.hpp"
#include "verdict_parts.hpp"

namespace backspring {
namespace {

constexpr double kDialReadsMm = 0.01;

std::string place(const Contact& worst, const PeakStress& peak) {
    return "at " + digits(worst.blade_angle_deg) + " deg, station " + digits(peak.station_mm) +
           " mm,";
}

void set_place(Margin& margin, const Contact& worst, const PeakStress& peak) {
    margin.station_mm = peak.station_mm;
    margin.blade_angle_deg = worst.blade_angle_deg;
}

void add_yield(std::vector<Margin>& margins,
               const Design& design,
               const Contact& worst,
               const PeakStress& peak) {
    const Band& yield = design.strength.yield_mpa;
    const double stress = peak.stress_mpa;
    Margin margin = make_margin("yield", stress, yield.value, "MPa");
    margin.margin_low = yield.low / stress;
    set_place(margin, worst, peak);
    margin.sources = {"astm-e140", "din-50150"};
    margin.sentence = "peak stress " + digits(stress) + " MPa " + place(worst, peak) + " is " +
                      digits(stress / yield.value) + " of yield";
    if (*margin.margin < 1.0) {
        margin.sentence += ": the outer fibre yields";
    } else if (*margin.margin_low < 1.0) {
        margin.sentence += ": at the low end of what the steel may carry it yields";
    } else {
        margin.sentence += ": it stays elastic";
    }
    margins.push_back(std::move(margin));
}

std::string set_words(const Worked& worked, const PlasticSet& set) {
    const PeakTorques pull = peak_torques(worked.action, worked.steps, set);
    std::string words = "expect it to take about " + millimetres(set.drop_pivot_mm) +
                        " of set at the pivot: preload " + millimetres(set.preload_before_mm) +
                        " before, " + millimetres(set.preload_opened_mm) +
                        " after the first opening, " + millimetres(set.preload_settled_mm) +
                        " once settled; pull falls to " + digits(pull.after_nmm / pull.before_nmm) +
                        " of what it was";
    if (set.preload_settled_mm <= 0.0) words += "; the spring no longer presses when open";
    if (!set.settled) words += "; it goes on yielding with every opening";
    const auto through = std::find_if(set.zones.begin(), set.zones.end(),
                                      [](const PlasticZone& zone) { return !zone.strain; });
    if (set.folded && through != set.zones.end()) {
        words += "; at station " + digits(through->deepest_mm) +
                 " mm it yields right through and folds as on a hinge: it may crack there";
    }
    return words;
}

/// Only of a spring that is likely to yield: the set itself, with the soft end of its strength.
void add_set(std::vector<Margin>& margins,
             const Design& design,
             const Worked& worked,
             const PeakStress& peak) {
    const Band& yield = design.strength.yield_mpa;
    if (peak.stress_mpa <= yield.value) return;
    const double ends[] = {yield.value, yield.low};
    const auto sets = plastic_sets(worked.action, design.spring, worked.steps, ends);
    const PlasticSet &likely = sets[0], &soft = sets[1];
    Margin margin = make_margin("set", likely.drop_pivot_mm, kDialReadsMm, "mm");
    if (soft.drop_pivot_mm > 0.0) margin.margin_low = kDialReadsMm / soft.drop_pivot_mm;
    set_place(margin, worked.worst, peak);
    margin.sources = {"astm-e140", "din-50150"};
    margin.sentence = set_words(worked, likely);
    margins.push_back(std::move(margin));
}

}  // namespace

void judge_bending(std::vector<Margin>& margins, const Design& design, const Worked& worked) {
    const PeakStress peak = peak_stress(worked.action, worked.worst);
    if (peak.stress_mpa <= 0.0) return;
    add_yield(margins, design, worked.worst, peak);
    add_set(margins, design, worked, peak);
}

}  // namespace backspring

#include <algorithm>

#include "backspring/strength/plastic_set.hpp"
#include "backspring/strength/yielding.hpp"
#include "verdict_parts.hpp"

namespace backspring {
namespace {

constexpr double kDialReadsMm = 0.01;

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
    Margin margin = make_margin(MarginKind::yield, stress, yield.value, Quantity::stress);
    margin.margin_low = yield.low / stress;
    set_place(margin, worst, peak);
    margin.sources = {"astm-e140", "din-50150"};
    margins.push_back(std::move(margin));
}

/// What the set does to preload and pull, and where the spring folds if it does.
void add_effects(Margin& margin, const Worked& worked, const PlasticSet& set) {
    const PeakTorques pull = peak_torques(worked.travel, set);
    margin.parameters = {{"preload_before", set.preload_before_mm, Quantity::length},
                         {"preload_opened", set.preload_opened_mm, Quantity::length},
                         {"preload_after", set.preload_after_shakedown_mm, Quantity::length},
                         {"pull_left", pull.after_nmm / pull.before_nmm, Quantity::ratio}};
    margin.names["ends"] = set.shakes_down ? "yes" : "no";
    const auto through = std::find_if(set.zones.begin(), set.zones.end(),
                                      [](const PlasticZone& zone) { return !zone.strain; });
    if (set.folded && through != set.zones.end()) {
        margin.parameters.push_back({"hinge", through->deepest_mm, Quantity::length});
    }
}

/// Only of a spring that is likely to yield: the set itself, with the soft end of its strength.
std::optional<PlasticSet> add_set(std::vector<Margin>& margins,
                                  const Design& design,
                                  const Worked& worked,
                                  const PeakStress& peak) {
    const Band& yield = design.strength.yield_mpa;
    if (peak.stress_mpa <= yield.value) return std::nullopt;
    const double ends[] = {yield.value, yield.low};
    const auto sets = plastic_sets(design.spring, worked.travel, worked.worst, ends);
    const PlasticSet &likely = sets[0], &soft = sets[1];
    Margin margin =
        make_margin(MarginKind::set, likely.drop_pivot_mm, kDialReadsMm, Quantity::length);
    if (soft.drop_pivot_mm > 0.0) margin.margin_low = kDialReadsMm / soft.drop_pivot_mm;
    set_place(margin, worked.worst, peak);
    margin.sources = {"astm-e140", "din-50150"};
    add_effects(margin, worked, likely);
    margins.push_back(std::move(margin));
    return likely;
}

}  // namespace

std::optional<PlasticSet> detail::judge_bending(std::vector<Margin>& margins,
                                                const Design& design,
                                                const Worked& worked) {
    const PeakStress peak = peak_stress(worked.action, worked.worst);
    if (peak.stress_mpa <= 0.0) return std::nullopt;
    add_yield(margins, design, worked.worst, peak);
    return add_set(margins, design, worked, peak);
}

}  // namespace backspring

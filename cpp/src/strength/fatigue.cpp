#include "backspring/strength/fatigue.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <utility>

#include "backspring/core/require.hpp"
#include "backspring/strength/sn_line.hpp"

namespace backspring {
namespace {

constexpr std::array kCriteria{Criterion::goodman, Criterion::gerber, Criterion::elliptic,
                               Criterion::swt, Criterion::walker};
// The ellipse is a design line to the yield stress, not a finding about life.
constexpr std::array kLifeCriteria{Criterion::goodman, Criterion::gerber, Criterion::swt,
                                   Criterion::walker};

void require_band(Requirements& rules, const std::string& name, const Band& band) {
    rules.positive(name + ".low", band.low, 3000.0, "MPa");
    rules.in_range(name + ".value", band.value, band.low, 3000.0, "MPa");
    rules.in_range(name + ".high", band.high, band.value, 3000.0, "MPa");
}

void require_sound(const FatigueInput& input) {
    Requirements rules;
    // A far overloaded spring's elastic stress is a result like any other.
    constexpr double most_mpa = 1e7;
    rules.in_range("stress_max_mpa", input.stress_max_mpa, -most_mpa, most_mpa, "MPa");
    rules.in_range("stress_min_mpa", input.stress_min_mpa, -most_mpa, input.stress_max_mpa, "MPa");
    require_band(rules, "tensile_mpa", input.tensile_mpa);
    require_band(rules, "yield_mpa", input.yield_mpa);
    rules.positive("width_mm", input.width_mm, 100.0, "mm");
    rules.positive("thickness_mm", input.thickness_mm, 100.0, "mm");
    rules.in_range("notch_factor", input.notch_factor, 1.0, 10.0, "");
    rules.in_range("openings", input.openings, 1.0, 1e9, "");
    rules.in_range("strokes", input.strokes, 1.0, 10.0, "");
    rules.throw_if_any();
}

/// One choice from all the bands.
struct Corner {
    double tensile_mpa;
    double yield_mpa;
    double share_at_thousand;
};

template <class Pick>
Corner picked(const FatigueInput& input, Pick tensile, Pick share) {
    const double strength = input.tensile_mpa.*tensile;
    return {strength, input.yield_mpa.*tensile, share_at_thousand(strength).*share};
}

constexpr std::array kEnds{&Band::low, &Band::high};

EnduranceFactors factors_of(const FatigueInput& input) {
    const double diameter = equivalent_diameter_mm(input.width_mm, input.thickness_mm);
    return {.surface = surface_factor(input.finish, input.tensile_mpa.value),
            .size = size_factor(diameter),
            .loading = loading_factor(Loading::bending),
            .temperature = temperature_factor(input.temperature_c),
            .reliability = reliability_factor(input.reliability)};
}

EnduranceFactors at_tensile(EnduranceFactors factors, Finish finish, double tensile_mpa) {
    factors.surface = surface_factor(finish, tensile_mpa);
    return factors;
}

SnLine design_line(const FatigueInput& input,
                   const EnduranceFactors& factors,
                   const Corner& steel) {
    const double tensile = steel.tensile_mpa;
    return {tensile, steel.share_at_thousand,
            at_tensile(factors, input.finish, tensile).product() * design_endurance_mpa(tensile)};
}

void widen(Band& band, double value) {
    band.low = std::min(band.low, value);
    band.high = std::max(band.high, value);
}

std::vector<FatigueMargin> margins_of(const FatigueInput& input, const Fatigue& found) {
    const auto strength = [&](const Corner& steel) {
        const SnLine line = design_line(input, found.factors, steel);
        return FatigueStrength{fatigue_strength_mpa(line, found.wanted_cycles), steel.tensile_mpa,
                               steel.yield_mpa};
    };
    std::vector<FatigueStrength> ends;
    for (const auto tensile : kEnds) {
        for (const auto share : kEnds) ends.push_back(strength(picked(input, tensile, share)));
    }
    const FatigueStrength middle = strength(picked(input, &Band::value, &Band::value));
    std::vector<FatigueMargin> margins;
    for (const Criterion criterion : kCriteria) {
        const auto margin = safety_factor(criterion, found.cycle, middle);
        if (!margin) continue;
        Band band{*margin, *margin, *margin};
        for (const auto& end : ends) widen(band, *safety_factor(criterion, found.cycle, end));
        margins.push_back({criterion, band});
    }
    return margins;
}

/// Openings until it cracks, infinite where no end is foreseen.
double openings_until(const FatigueInput& input,
                      const Fatigue& found,
                      const Corner& steel,
                      double rotating_mpa,
                      Criterion criterion) {
    EnduranceFactors typical = at_tensile(found.factors, input.finish, steel.tensile_mpa);
    typical.reliability = 1.0;
    const SnLine line{steel.tensile_mpa, steel.share_at_thousand, typical.product() * rotating_mpa};
    const FatigueStrength strength{line.endurance_mpa, steel.tensile_mpa, steel.yield_mpa};
    const auto cycles =
        cycles_to_failure(line, reversed_stress_mpa(criterion, found.cycle, strength));
    if (!cycles) return std::numeric_limits<double>::infinity();
    return *cycles / found.cycles_per_opening;
}

LifeBand life_of(const FatigueInput& input, const Fatigue& found) {
    const Corner middle = picked(input, &Band::value, &Band::value);
    const double typical = openings_until(
        input, found, middle, mean_endurance_mpa(middle.tensile_mpa).value, Criterion::swt);
    Band band{typical, typical, typical};
    for (const auto tensile : kEnds) {
        for (const auto end : kEnds) {
            const Corner steel = picked(input, tensile, end);
            const double rotating = mean_endurance_mpa(steel.tensile_mpa).*end;
            for (const Criterion criterion : kLifeCriteria) {
                widen(band, openings_until(input, found, steel, rotating, criterion));
            }
        }
    }
    const auto end_of = [](double openings) -> std::optional<double> {
        if (openings == std::numeric_limits<double>::infinity()) return std::nullopt;
        return openings;
    };
    return {.value = end_of(band.value), .low = end_of(band.low), .high = end_of(band.high)};
}

Band times(const Band& band, double factor) {
    return {factor * band.value, factor * band.low, factor * band.high};
}

}  // namespace

Fatigue fatigue(const FatigueInput& input) {
    require_sound(input);
    Fatigue found;
    found.cycle = cycle_between(input.notch_factor * input.stress_min_mpa,
                                input.notch_factor * input.stress_max_mpa);
    found.factors = factors_of(input);
    found.cycles_per_opening = 2.0 * input.strokes;
    found.wanted_cycles = found.cycles_per_opening * input.openings;
    const SnLine line =
        design_line(input, found.factors, picked(input, &Band::value, &Band::value));
    found.endurance_mpa = line.endurance_mpa;
    found.strength_mpa = fatigue_strength_mpa(line, found.wanted_cycles);
    found.margins = margins_of(input, found);
    if (const auto factor = first_yield_factor(found.cycle, 1.0)) {
        found.first_yield = times(input.yield_mpa, *factor);
    }
    const double greatest = found.cycle.max_mpa();
    for (auto& allowable : spring_allowables(input.steel, found.wanted_cycles)) {
        if (!(greatest > 0.0)) break;
        const double share = allowable.fraction / greatest;
        found.trade.push_back({std::move(allowable), times(input.tensile_mpa, share)});
    }
    found.life_openings = life_of(input, found);
    return found;
}

}  // namespace backspring

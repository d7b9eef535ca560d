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
    rules.in_range("residual_mpa", input.residual_mpa, -3000.0, 3000.0, "MPa");
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

double surface_of(const FatigueInput& input, double tensile_mpa) {
    const double finished = surface_factor(input.finish, tensile_mpa);
    return input.soft_skin ? std::min(finished, kSoftSkinShare) : finished;
}

EnduranceFactors factors_of(const FatigueInput& input) {
    const double diameter = equivalent_diameter_mm(input.width_mm, input.thickness_mm);
    return {.surface = surface_of(input, input.tensile_mpa.value),
            .size = size_factor(diameter),
            .loading = loading_factor(Loading::bending),
            .temperature = temperature_factor(input.temperature_c),
            .reliability = reliability_factor(input.reliability)};
}

/// The one line that margins and lives are read from.
SnLine design_line(const FatigueInput& input, EnduranceFactors factors, const Corner& steel) {
    const double tensile = steel.tensile_mpa;
    factors.surface = surface_of(input, tensile);
    return {tensile, steel.share_at_thousand, factors.product() * design_endurance_mpa(tensile)};
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
        const auto margin = safety_factor(criterion, found.cycle, middle, input.residual_mpa);
        if (!margin) continue;
        Band band{*margin, *margin, *margin};
        for (const auto& end : ends) {
            const auto far = safety_factor(criterion, found.cycle, end, input.residual_mpa);
            widen(band, far.value_or(*margin));
        }
        margins.push_back({criterion, band});
    }
    return margins;
}

/// Openings until it cracks, infinite where no end is foreseen.
double openings_until(const FatigueInput& input,
                      const Fatigue& found,
                      const EnduranceFactors& factors,
                      const Corner& steel,
                      Criterion criterion) {
    const SnLine line = design_line(input, factors, steel);
    const FatigueStrength strength{line.endurance_mpa, steel.tensile_mpa, steel.yield_mpa};
    const StressCycle cycle = with_residual(found.cycle, input.residual_mpa);
    const auto cycles = cycles_to_failure(line, reversed_stress_mpa(criterion, cycle, strength));
    if (!cycles) return std::numeric_limits<double>::infinity();
    return *cycles / found.cycles_per_opening;
}

LifeBand life_of(const FatigueInput& input, const Fatigue& found) {
    const Corner middle = picked(input, &Band::value, &Band::value);
    const auto by_swt = [&](const EnduranceFactors& factors) {
        return openings_until(input, found, factors, middle, Criterion::swt);
    };
    EnduranceFactors half = found.factors;
    half.reliability = 1.0;
    const double value = by_swt(found.factors);
    Band band{value, value, value};
    for (const auto tensile : kEnds) {
        for (const auto share : kEnds) {
            const Corner steel = picked(input, tensile, share);
            for (const Criterion criterion : kCriteria) {
                if (!tells_life(criterion)) continue;
                widen(band, openings_until(input, found, found.factors, steel, criterion));
            }
        }
    }
    return {.value = value, .low = band.low, .high = band.high, .typical = by_swt(half)};
}

Band times(const Band& band, double factor) {
    return {factor * band.value, factor * band.low, factor * band.high};
}

Fatigue begun(const FatigueInput& input) {
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
    return found;
}

}  // namespace

std::optional<double> likely_margin(const FatigueInput& input, Criterion criterion) {
    const Fatigue found = begun(input);
    const FatigueStrength middle{found.strength_mpa, input.tensile_mpa.value,
                                 input.yield_mpa.value};
    return safety_factor(criterion, found.cycle, middle, input.residual_mpa);
}

Fatigue fatigue(const FatigueInput& input) {
    Fatigue found = begun(input);
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

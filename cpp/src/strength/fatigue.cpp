#include "backspring/strength/fatigue.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <span>
#include <string_view>
#include <utility>

#include "backspring/core/require.hpp"
#include "backspring/strength/sn_line.hpp"

namespace backspring {
namespace {

constexpr std::array kCriteria{Criterion::goodman, Criterion::gerber, Criterion::elliptic,
                               Criterion::swt, Criterion::walker};

/// The names of a band's three numbers.
using BandNames = std::array<std::string_view, 3>;

void require_band(Requirements& rules, const BandNames& names, const Band& band) {
    rules.positive(names[0], band.low, 3000.0, "MPa");
    rules.in_range(names[1], band.value, band.low, 3000.0, "MPa");
    rules.in_range(names[2], band.high, band.value, 3000.0, "MPa");
}

void require_sound(const FatigueInput& input) {
    Requirements rules;
    // A far overloaded spring's elastic stress is a result like any other.
    constexpr double most_mpa = 1e7;
    rules.in_range("stress_max_mpa", input.stress_max_mpa, -most_mpa, most_mpa, "MPa");
    rules.in_range("stress_min_mpa", input.stress_min_mpa, -most_mpa, input.stress_max_mpa, "MPa");
    require_band(rules, {"tensile_mpa.low", "tensile_mpa.value", "tensile_mpa.high"},
                 input.tensile_mpa);
    require_band(rules, {"yield_mpa.low", "yield_mpa.value", "yield_mpa.high"}, input.yield_mpa);
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

/// A line with the steel it is of.
struct SteelLine {
    Corner steel;
    SnLine line;
};

SteelLine likely_line(const FatigueInput& input, const EnduranceFactors& factors) {
    const Corner steel = picked(input, &Band::value, &Band::value);
    return {steel, design_line(input, factors, steel)};
}

std::array<SteelLine, 4> lines_at_ends(const FatigueInput& input, const EnduranceFactors& factors) {
    const auto line = [&](auto tensile, auto share) {
        const Corner steel = picked(input, tensile, share);
        return SteelLine{steel, design_line(input, factors, steel)};
    };
    return {line(kEnds[0], kEnds[0]), line(kEnds[0], kEnds[1]), line(kEnds[1], kEnds[0]),
            line(kEnds[1], kEnds[1])};
}

void widen(Band& band, double value) {
    band.low = std::min(band.low, value);
    band.high = std::max(band.high, value);
}

std::vector<FatigueMargin> margins_of(const FatigueInput& input,
                                      const Fatigue& found,
                                      std::span<const SteelLine> ends) {
    const auto strength = [&](const SteelLine& at) {
        return FatigueStrength{fatigue_strength_mpa(at.line, found.wanted_cycles),
                               at.steel.tensile_mpa, at.steel.yield_mpa};
    };
    std::array<FatigueStrength, 4> far_strengths;
    std::ranges::transform(ends, far_strengths.begin(), strength);
    const FatigueStrength middle = strength(likely_line(input, found.factors));
    std::vector<FatigueMargin> margins;
    margins.reserve(kCriteria.size());
    for (const Criterion criterion : kCriteria) {
        const auto margin = safety_factor(criterion, found.cycle, middle, input.residual_mpa);
        if (!margin) continue;
        Band band{*margin, *margin, *margin};
        for (const auto& end : far_strengths) {
            const auto far = safety_factor(criterion, found.cycle, end, input.residual_mpa);
            widen(band, far.value_or(*margin));
        }
        margins.push_back({criterion, band});
    }
    return margins;
}

double reversed_mpa(const FatigueInput& input,
                    const Fatigue& found,
                    const SteelLine& at,
                    Criterion criterion) {
    const FatigueStrength strength{at.line.endurance_mpa, at.steel.tensile_mpa, at.steel.yield_mpa};
    const StressCycle cycle = with_residual(found.cycle, input.residual_mpa);
    return reversed_stress_mpa(criterion, cycle, strength);
}

/// Openings until it cracks, infinite where no end is foreseen.
double openings_until(const Fatigue& found, const SnLine& line, double reversed_mpa) {
    const auto cycles = cycles_to_failure(line, reversed_mpa);
    if (!cycles) return std::numeric_limits<double>::infinity();
    return *cycles / found.cycles_per_opening;
}

double likely_openings(const FatigueInput& input, const Fatigue& found) {
    const SteelLine likely = likely_line(input, found.factors);
    return openings_until(found, likely.line, reversed_mpa(input, found, likely, Criterion::swt));
}

LifeBand life_of(const FatigueInput& input, const Fatigue& found, std::span<const SteelLine> ends) {
    Fatigue half = found;
    half.factors.reliability = 1.0;
    const double value = likely_openings(input, found);
    Band band{value, value, value};
    for (const SteelLine& end : ends) {
        // The harder a cycle counts, the shorter the life: only the ends are asked.
        Band harm{.value = 0.0, .low = std::numeric_limits<double>::infinity(), .high = 0.0};
        for (const Criterion criterion : kCriteria) {
            if (tells_life(criterion)) widen(harm, reversed_mpa(input, found, end, criterion));
        }
        widen(band, openings_until(found, end.line, harm.low));
        widen(band, openings_until(found, end.line, harm.high));
    }
    return {.value = value,
            .low = band.low,
            .high = band.high,
            .typical = likely_openings(input, half)};
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
    const SnLine line = likely_line(input, found.factors).line;
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

double likely_life_openings(const FatigueInput& input) {
    return likely_openings(input, begun(input));
}

Fatigue fatigue(const FatigueInput& input) {
    Fatigue found = begun(input);
    const auto ends = lines_at_ends(input, found.factors);
    found.margins = margins_of(input, found, ends);
    if (const auto factor = first_yield_factor(found.cycle, 1.0)) {
        found.first_yield = times(input.yield_mpa, *factor);
    }
    const double greatest = found.cycle.max_mpa();
    found.life_openings = life_of(input, found, ends);
    if (!(greatest > 0.0)) return found;
    std::vector<SpringAllowable> allowables = spring_allowables(input.steel, found.wanted_cycles);
    found.trade.reserve(allowables.size());
    for (SpringAllowable& allowable : allowables) {
        const double share = allowable.fraction / greatest;
        found.trade.push_back({std::move(allowable), times(input.tensile_mpa, share)});
    }
    return found;
}

}  // namespace backspring

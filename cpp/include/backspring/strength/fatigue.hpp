#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backspring/core/band.hpp"
#include "backspring/strength/endurance.hpp"
#include "backspring/strength/mean_stress.hpp"
#include "backspring/strength/spring_allowable.hpp"

namespace backspring {

/// What fatigue at one place of the spring depends on.
struct FatigueInput {
    double stress_max_mpa = 0.0;              ///< greatest of the travel, tension positive [MPa]
    double stress_min_mpa = 0.0;              ///< least of the travel [MPa]
    Band tensile_mpa;                         ///< tensile strength [MPa]
    Band yield_mpa;                           ///< 0.2 % proof stress [MPa]
    Finish finish = Finish::ground;           ///< of the surface there
    double residual_mpa = 0.0;                ///< in it unloaded, compression negative [MPa]
    bool soft_skin = false;                   ///< decarburised there
    double width_mm = 0.0;                    ///< of the section [mm]
    double thickness_mm = 0.0;                ///< of the section [mm]
    double notch_factor = 1.0;                ///< on both stresses; 1 where they are local already
    double reliability = 0.99;                ///< part of all springs that must last
    double temperature_c = 20.0;              ///< at work [C]
    double openings = 1e5;                    ///< wanted; each opens and closes once
    int strokes = 2;                          ///< crests passed on the way open: 2 with a half-stop
    SpringSteel steel = SpringSteel::carbon;  ///< whose trade tables are read
};

/// How many times the stresses can grow for the wanted openings, by one criterion.
struct FatigueMargin {
    Criterion criterion = Criterion::goodman;  ///< how mean stress counts
    Band margin;                               ///< below 1: it is expected to crack before
};

/// How many times the stress can grow before one of the spring makers' tables is passed.
struct TradeMargin {
    SpringAllowable allowable;  ///< the table
    Band margin;                ///< fraction x tensile strength over greatest stress
};

/// Openings until it cracks; infinite where no limit is found.
struct LifeBand {
    double value = 0.0;    ///< what the wanted part of all springs outlasts
    double low = 0.0;      ///< by the most cautious criterion, bands at their unkind ends
    double high = 0.0;     ///< by the least cautious one, bands at their kind ends
    double typical = 0.0;  ///< what half of all springs outlast
};

/// Fatigue at one place of the spring.
struct Fatigue {
    StressCycle cycle;                   ///< of the load, notch factor included
    EnduranceFactors factors;            ///< on the endurance limit
    double endurance_mpa = 0.0;          ///< limit of the part at the wanted reliability [MPa]
    double strength_mpa = 0.0;           ///< reversed stress borne for the wanted cycles [MPa]
    double cycles_per_opening = 0.0;     ///< 2 for each stroke
    double wanted_cycles = 0.0;          ///< wanted openings in cycles
    std::vector<FatigueMargin> margins;  ///< goodman, gerber, elliptic, swt, walker
    std::optional<Band> first_yield;     ///< times the stress can grow before it yields
    std::vector<TradeMargin> trade;      ///< spring makers' tables
    LifeBand life_openings;              ///< openings until it cracks
};

/// Fatigue of the spring at one place, over the travel of the blade.
///
/// Opening and closing pass each crest once, so one opening is two cycles for each stroke, each
/// counted from the lowest stress of the travel to the highest: cautious where one crest is lower.
///
/// Margins and life are read from one line of strength against cycles, that of the wanted
/// reliability with the design endurance limit: by every criterion the margin is 1 where the life
/// is the openings wanted. Values are by smax sa. The ends of a margin's band, and of the life's,
/// are reached with the bands of tensile and yield stress and of the strength at 10^3 cycles at
/// their ends; the life's are the shortest and longest of Goodman, Gerber, SWT and Walker, an
/// envelope and not odds. The typical life leaves the reliability factor out.
///
/// A residual stress adds to the mean of the cycle. A soft skin leaves kSoftSkinShare of the
/// endurance limit, or what the finish leaves where that is less.
///
/// @throws InvalidInput  with every broken rule
/// @throws OutOfRange    a temperature or reliability without data
/// @source shigley-9, dowling-2009; mattson-roberts, soft-skin-study
/// @note   in air, without rust: pits and sweat leave no endurance limit
/// @note   past 10^6 cycles the line is level, so a life is at most that many or without limit
[[nodiscard]] Fatigue fatigue(const FatigueInput& input);

/// One margin alone, with all bands at their likely values; nothing where the cycle has none.
///
/// @throws InvalidInput  with every broken rule
[[nodiscard]] std::optional<double> likely_margin(const FatigueInput& input, Criterion criterion);

/// The life alone, by smax sa with all bands at their likely values.
///
/// @throws InvalidInput  with every broken rule
[[nodiscard]] double likely_life_openings(const FatigueInput& input);

}  // namespace backspring

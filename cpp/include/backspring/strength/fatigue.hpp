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
    Finish finish = Finish::ground;           ///< of the outer fibre
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

/// Openings until it cracks; none: no limit is found.
struct LifeBand {
    std::optional<double> value;  ///< typical spring
    std::optional<double> low;    ///< everything at its worst at once
    std::optional<double> high;   ///< everything at its best at once
};

/// Fatigue at one place of the spring.
struct Fatigue {
    StressCycle cycle;                   ///< notch factor included
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
/// Margins hold for the wanted reliability, with the design endurance limit; their bands reach over
/// the bands of tensile and yield stress and of the strength at 10^3 cycles. The life's value is
/// the typical spring: mean endurance limit, smax sa criterion. Its low and high are the shortest
/// and longest that Goodman, Gerber, SWT and Walker give with the endurance limit one standard
/// deviation down or up and the other bands at their ends, all at once: an envelope, not odds.
///
/// @throws InvalidInput  with every broken rule
/// @throws OutOfRange    a temperature or reliability without data
/// @source shigley-9, dowling-2009
/// @note   in air, without rust: pits and sweat leave no endurance limit
[[nodiscard]] Fatigue fatigue(const FatigueInput& input);

}  // namespace backspring

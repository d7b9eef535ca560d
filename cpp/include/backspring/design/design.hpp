#pragma once

#include <optional>
#include <vector>

#include "backspring/action/fit.hpp"
#include "backspring/action/friction.hpp"
#include "backspring/action/snap.hpp"
#include "backspring/core/error.hpp"
#include "backspring/spring/spring.hpp"
#include "backspring/steel/strength.hpp"
#include "backspring/strength/endurance.hpp"
#include "backspring/strength/pins.hpp"
#include "backspring/strength/spring_allowable.hpp"
#include "backspring/tang/tang.hpp"

namespace backspring {

/// The spring's surface and what of its outline raises the stress locally.
struct Surface {
    Finish finish = Finish::ground;           ///< of the outer fibre, for fatigue
    std::optional<double> kink_radius_mm;     ///< root radius of the belly's kinks and steps [mm]
    std::optional<double> curve_radius_mm;    ///< of a hollow belly, before it is loaded [mm]
    SpringSteel steel = SpringSteel::carbon;  ///< which of the spring makers' tables are read
};

/// The pins through spring and liners; a pin is as thick as its hole where nothing else is said.
struct Pins {
    std::optional<double> middle_mm;        ///< diameter of the middle pin [mm]
    std::optional<double> rear_mm;          ///< diameter of the rear pin [mm]
    std::optional<double> liner_mm;         ///< thickness of one liner [mm]
    double yield_mpa = kSoftMetalYieldMpa;  ///< of the pins [MPa]
};

/// Hardness of the two parts that rub, where it is known.
struct Hardness {
    std::optional<double> spring_hrc;  ///< Rockwell C
    std::optional<double> tang_hrc;    ///< Rockwell C
};

/// What a check judges a design against; what is left out is not judged.
struct Targets {
    std::optional<double> pull_low_n;    ///< least peak pull, opening [N]
    std::optional<double> pull_high_n;   ///< greatest peak pull, opening [N]
    std::optional<double> yield_margin;  ///< least yield stress over worst stress of the travel
    std::optional<double> reading_mm;    ///< largest distance from flush, loaded [mm]
    std::optional<double> openings;      ///< openings the spring must outlast
};

/// A slip joint on paper: the blade's tang, the spring, and how they are fitted.
struct Design {
    Spring spring;      ///< the beam
    Strength strength;  ///< of the spring's steel at its temper
    Tang tang;          ///< faces and corners
    Fit fit;            ///< preload and dial
    Blade blade;        ///< for pull and snap
    Friction friction;  ///< at spring and pivot
    Targets targets;    ///< what to judge against
    Surface surface;    ///< of the spring
    Pins pins;          ///< through spring and liners
    Hardness hardness;  ///< of spring and tang
};

/// Every broken rule of a design, by the keys of a design file.
[[nodiscard]] std::vector<Fault> faults(const Design& design);

}  // namespace backspring

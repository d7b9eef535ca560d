#pragma once

#include <optional>
#include <vector>

#include "backspring/action/fit.hpp"
#include "backspring/action/friction.hpp"
#include "backspring/action/snap.hpp"
#include "backspring/core/error.hpp"
#include "backspring/spring/spring.hpp"
#include "backspring/steel/strength.hpp"
#include "backspring/tang/tang.hpp"

namespace backspring {

/// What a check judges a design against; what is left out is not judged.
struct Targets {
    std::optional<double> pull_low_n;    ///< least peak pull, opening [N]
    std::optional<double> pull_high_n;   ///< greatest peak pull, opening [N]
    std::optional<double> yield_margin;  ///< least yield stress over worst stress of the travel
    std::optional<double> reading_mm;    ///< largest distance from flush, loaded [mm]
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
};

/// Every broken rule of a design, by the keys of a design file.
[[nodiscard]] std::vector<Fault> faults(const Design& design);

}  // namespace backspring

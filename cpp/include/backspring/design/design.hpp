#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "backspring/action/friction.hpp"
#include "backspring/core/error.hpp"
#include "backspring/design/blade.hpp"
#include "backspring/spring/frame.hpp"
#include "backspring/spring/spring.hpp"
#include "backspring/steel/strength.hpp"
#include "backspring/strength/endurance.hpp"
#include "backspring/strength/pins.hpp"
#include "backspring/strength/spring_allowable.hpp"

namespace backspring {

/// The spring's surface and what of its outline raises the stress locally.
struct Surface {
    Finish finish = Finish::ground;                ///< of the outer fibre, for fatigue
    HoleFinish hole_finish = HoleFinish::drilled;  ///< of the pin holes' walls, for fatigue
    std::optional<double> kink_radius_mm;     ///< root radius of the belly's kinks and steps [mm]
    std::optional<double> curve_radius_mm;    ///< of a hollow belly, before it is loaded [mm]
    SpringSteel steel = SpringSteel::carbon;  ///< which of the spring makers' tables are read
    double residual_mpa = 0.0;       ///< in the skin of the faces, compression negative [MPa]
    double hole_residual_mpa = 0.0;  ///< in the skin of the holes' walls [MPa]
    double soft_skin_mm = 0.0;       ///< depth of a decarburised skin, 0 for none [mm]
};

/// The pins through spring and liners; a pin is as thick as its hole where nothing else is said.
struct Pins {
    std::optional<double> middle_mm;        ///< diameter of the middle pin [mm]
    std::optional<double> rear_mm;          ///< diameter of the rear pin [mm]
    std::optional<double> liner_mm;         ///< thickness of one liner [mm]
    double yield_mpa = kSoftMetalYieldMpa;  ///< of the pins [MPa]
};

/// Hardness of the spring, where it is known; each tang has its own.
struct Hardness {
    std::optional<double> spring_hrc;  ///< Rockwell C
};

/// What a check judges a design against; what is left out is not judged.
struct Targets {
    std::optional<double> pull_low_n;    ///< least peak pull, opening [N]
    std::optional<double> pull_high_n;   ///< greatest peak pull, opening [N]
    std::optional<double> yield_margin;  ///< least yield stress over worst stress of the travel
    std::optional<double> reading_mm;    ///< largest distance from flush, loaded [mm]
    std::optional<double> openings;      ///< openings the spring must outlast
    std::optional<double> edge_gap_mm;   ///< least gap left under the edge, eased shut [mm]
};

/// A slip joint on paper: a spring, and the blades that are fitted to it.
struct Design {
    Spring spring;                                      ///< the beam
    Strength strength;                                  ///< of the spring's steel at its temper
    std::vector<Blade> blades = std::vector<Blade>(1);  ///< at least one
    Friction friction;                                  ///< at spring and pivot, of every blade
    Targets targets;                                    ///< what to judge against
    Surface surface;                                    ///< of the spring
    Pins pins;                                          ///< through spring and liners
    Frame frame;                                        ///< what holds the pins; rigid if unstated
    Hardness hardness;                                  ///< of the spring

    /// The blade a question is about: the first.
    [[nodiscard]] const Blade& own() const { return blades.front(); }
    [[nodiscard]] Blade& own() { return blades.front(); }
};

/// The same design with another blade first; the others keep their order.
///
/// From a blade at the other end the spring is seen turned round, and every end the other way, so
/// that the first blade's is the front. With two pins the middle one is then the one that was the
/// rear one.
///
/// @param blade  place in the list, from 0, below their number
[[nodiscard]] Design seen_from(const Design& design, std::size_t blade);

/// Every broken rule of a design, by the keys of a design file.
[[nodiscard]] std::vector<Fault> faults(const Design& design);

/// The same of a design with one blade that differs from a sound one by the number of one key: only
/// the rules that read the key's table are looked at.
[[nodiscard]] std::vector<Fault> faults_of_change(const Design& design, std::string_view key);

}  // namespace backspring

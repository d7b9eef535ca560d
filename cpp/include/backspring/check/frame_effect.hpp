#pragma once

#include <optional>
#include <vector>

#include "backspring/check/solution.hpp"

namespace backspring {

/// What another frame or clearance does to a blade that is otherwise the same.
struct FrameEffect {
    double pull_share = 0.0;             ///< change of the peak pull over the peak pull
    std::optional<double> half_stop_mm;  ///< change of the loaded reading [mm]
    std::optional<double> closed_mm;     ///< change of the loaded reading [mm]
};

/// Compares pull and loaded readings of two designs, the own blade with all others as they stand.
///
/// @throws InvalidInput  with every broken rule
[[nodiscard]] FrameEffect frame_effect(const Design& design, const Design& changed);

/// The same against a design that is worked out already.
[[nodiscard]] FrameEffect frame_effect(Solution& before, const Design& changed);

/// What a design may leave unsaid of the parts that hold its spring and blade.
enum class HeldBy {
    liners,           ///< liners that give, in place of pins that stand still
    pin_clearance,    ///< holes of the spring wider than its pins
    pivot_clearance,  ///< a hole or bushing wider than the pivot
};

/// The effect of what a design does not state, if it is as knives usually are.
struct UsualEffect {
    HeldBy what = HeldBy::liners;  ///< what is not stated
    FrameEffect least;             ///< of a stiff frame; of no clearance: nothing
    FrameEffect most;              ///< of a slender frame; of a loose fit
};

/// Liners as knives usually have them: stainless 1.2 mm and twice as high as the pivot is deep, or
/// brass 1 mm and one and a half times as high.
///
/// The pivot's depth is counted from the spring's back at the pivot. Scales left out.
///
/// @source common practice, no source
[[nodiscard]] Frame stiff_liners(const Design& design);
[[nodiscard]] Frame slender_liners(const Design& design);  ///< see stiff_liners()

/// Clearance of a loose fit: 0.05 mm at the spring's pins, 0.03 mm at the pivot, across.
///
/// @source common practice, no source
inline constexpr double kLoosePinMm = 0.05;
inline constexpr double kLoosePivotMm = 0.03;  ///< see kLoosePinMm

/// The effect of each thing that a design does not state, at its least and most as knives usually
/// are; nothing for what is stated, and of the spring's pins nothing where it is not on two.
///
/// @throws InvalidInput  with every broken rule
[[nodiscard]] std::vector<UsualEffect> usual_effects(const Design& design);

/// The same of a design that is worked out already.
[[nodiscard]] std::vector<UsualEffect> usual_effects(Solution& solution);

}  // namespace backspring

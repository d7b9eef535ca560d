#pragma once

#include <cstddef>
#include <optional>

#include "backspring/design/design.hpp"

namespace backspring {

/// What a number of an answer measures.
enum class ResultKind {
    force,      ///< of the tang on the spring, or a pull [N]
    torque,     ///< of the blade, either way [N mm]
    effort,     ///< torque of the hand, never below nothing [N mm]
    energy,     ///< [mJ]
    stress,     ///< largest, either side [MPa]
    stiffness,  ///< [N/mm]
    reading,    ///< of the dial [mm]
    station,    ///< on the spring [mm]
    angle,      ///< of the blade [deg]
    margin,     ///< limit over value
    speed,      ///< of the blade, linear or angular
};

/// How many there are.
inline constexpr std::size_t kResultKinds = static_cast<std::size_t>(ResultKind::speed) + 1;

/// Least and greatest that a result can be.
struct ResultBounds {
    double low = 0.0;   ///< least, a hair below nothing where rounding may end there
    double high = 0.0;  ///< greatest
};

/// What a result of this design can be, far beyond all that makes sense: the last check before a
/// number leaves.
///
/// A force no larger than would stretch the spring to twice its length, a stress no larger than
/// Young's modulus, a reading no farther than the spring is long.
[[nodiscard]] ResultBounds result_bounds(const Design& design, ResultKind kind);

/// Whether a number is finite and within bounds.
[[nodiscard]] bool is_within(const ResultBounds& bounds, double value);

/// Whether a number is finite and within its bounds.
[[nodiscard]] bool is_possible(const Design& design, ResultKind kind, double value);

/// A number, or none where it is impossible.
[[nodiscard]] std::optional<double> if_possible(const Design& design,
                                                ResultKind kind,
                                                const std::optional<double>& value);

}  // namespace backspring

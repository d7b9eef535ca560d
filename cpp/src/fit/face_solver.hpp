#pragma once

#include <array>

#include "backspring/fit/fit_model.hpp"

namespace backspring::detail {

/// A way to move the faces of one position: depth per millimetre along it.
using Direction = FaceDepths;

/// Moves the half-stop face.
inline constexpr Direction kHalfStop{.half_stop_mm = 1.0};
/// Moves the closed face near the pivot; the nose stays.
inline constexpr Direction kClosed{.closed_mm = 1.0};
/// Moves the nose of the kick.
inline constexpr Direction kKick{.kick_mm = 1.0};
/// Moves the whole closed side.
inline constexpr Direction kClosedSide{.closed_mm = 1.0, .kick_mm = 1.0};

/// Depths along some directions.
[[nodiscard]] FaceDepths along(const Direction& direction, double depth_mm);
[[nodiscard]] FaceDepths sum(const FaceDepths& a, const FaceDepths& b);

/// Half-stop and closed, in this order, of one state; both wanted or had.
struct Pair {
    std::optional<double> half_stop_mm;
    std::optional<double> closed_mm;
};

/// Readings of a design with depths taken off.
///
/// @throws NoConvergence  where the blade does not stay half-stopped or closed
[[nodiscard]] Pair readings_of(const Design& design,
                               const FaceDepths& depths,
                               const FitUnknowns& unknowns,
                               FitState state);

/// As readings_of() with the pins in, each where it is lowest of all cases of the other blades.
///
/// @throws NoConvergence  where the blade does not stay half-stopped or closed in one of them
[[nodiscard]] Pair lowest_of(const Design& design,
                             const FaceDepths& depths,
                             const FitUnknowns& unknowns);

/// Height of the tip that goes with a closed angle; a tip that is not known is one on a long blade,
/// which stays where it is when that one does.
[[nodiscard]] double tip_of(const Design& design, double closed_angle_deg);

/// Which readings are wanted.
enum class Wanted {
    unloaded,  ///< rear pin out
    loaded,    ///< pins in, as they are taken
    lowest,    ///< pins in, where they are lowest
};

/// One question to the solver.
struct FaceQuestion {
    const Design& design;
    const FitUnknowns& unknowns;
    Wanted which;
    Pair wanted;         ///< a position without a value is left alone
    Direction closed;    ///< how the closed reading is moved; the half-stop by its own face
    FaceDepths already;  ///< taken off before
    std::optional<double> tip_height_mm{};  ///< wanted of tip_of(); then closed face and kick both
                                            ///< move, whatever `closed` says
};

/// Depths, less than nothing included, that give the wanted readings: Newton's method with the
/// model's own Jacobian, halving steps that lead away.
///
/// @returns  depth at the half-stop face and along the closed direction [mm]
/// @throws NoConvergence  no tang gives them
[[nodiscard]] std::array<double, 2> solve_faces(const FaceQuestion& question);

/// As solve_faces() for both readings and the tip, by the half-stop and closed faces and the kick.
///
/// @returns  depths without those taken off before
/// @throws NoConvergence  no tang gives them
[[nodiscard]] FaceDepths solve_faces_and_tip(const FaceQuestion& question);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include <vector>

#include "backspring/core/function_ref.hpp"
#include "backspring/spring/bending.hpp"
#include "backspring/spring/flexibility.hpp"

namespace backspring {

/// What a force along the spring, towards its pins, does to the overhang when it acts beside the
/// mid-line: its lever is straight between close stations.
struct AxialPush {
    struct Piece {
        double x_mm;            ///< where it begins
        double lever_mm;        ///< of the force about the mid-line there, + bends the pad outward
        double lever_slope;     ///< gained per mm
        BendingIntegrals upto;  ///< of the spring, to where it begins
        double turn_rad_per_n;  ///< of the section there
        double arm_mm_per_n;    ///< int s lever ds/(E I) to there [mm/N]
        double stress_per_moment;  ///< outer fibre, net section [MPa/(N mm)]
        double stress_per_push;    ///< of the force itself, spread evenly [MPa/N]
    };
    std::vector<Piece> pieces;  ///< from the middle pin to where the force acts
    double at_mm = 0.0;         ///< station it acts at [mm]
    BeamPlace end{};            ///< the same with what bending knows of it
    double own_mm_per_n = 0.0;  ///< how far its own place gives way along it [mm/N]

    /// Lever about the pin [mm].
    [[nodiscard]] double root_lever_mm() const { return pieces.front().lever_mm; }
    /// Lever about the mid-line at a station; 0 ahead of where it acts [mm].
    [[nodiscard]] double lever_mm(double x_mm) const;
};

/// Works out a push at a station.
///
/// M(x) = R lever(x) ahead of the middle pin, which takes the force; behind it the moment falls in
/// a straight line to the rear pin.
///
/// @param at_mm      where it acts [mm], > 0
/// @param pieces     at least so many, and one at every change of the section
/// @param lever_mm   height of the force above the mid-line at a station, at a step the one ahead
/// @source unit-load theorem
/// @note   where both pins' holes take the force, the rear one its share, little changes: the
///         holes lie at one height within a fraction of a millimetre
[[nodiscard]] AxialPush make_axial_push(const Spring& spring,
                                        const Flexibility& flexibility,
                                        double at_mm,
                                        FunctionRef lever_mm,
                                        int pieces = 32);

/// The same with a lever that is told by all that bending knows of a station, asked in rising
/// order.
[[nodiscard]] AxialPush axial_push_by_places(const Spring& spring,
                                             const Flexibility& flexibility,
                                             double at_mm,
                                             BorrowedFunction<const BeamPlace&> lever_mm,
                                             int pieces = 32);

/// The same push somewhat farther outward.
[[nodiscard]] AxialPush raised(AxialPush push, const Flexibility& flexibility, double by_mm);

/// Outward deflection and slope at a station for a unit of the push.
[[nodiscard]] Compliance push_compliance(const Flexibility& flexibility,
                                         const AxialPush& push,
                                         double x_mm);

/// The same at a known place, no farther than where the push acts.
[[nodiscard]] Compliance push_compliance(const Flexibility& flexibility,
                                         const AxialPush& push,
                                         const BeamPlace& place);

/// Largest nominal stress along the whole spring of loads and a push: bending by both, and the push
/// itself, spread evenly over the section.
///
/// On a whole piece moment and thickness both go in straight lines, so that bending and even stress
/// together peak where a moment in a straight line would.
///
/// @param loads   ahead of the middle pin, none beyond where the push acts
/// @param push_n  [N]
[[nodiscard]] PeakStress peak_stress(const StressProbe& probe,
                                     std::span<const Load> loads,
                                     const AxialPush& push,
                                     double push_n);

}  // namespace backspring

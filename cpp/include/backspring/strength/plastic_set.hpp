#pragma once

#include <span>
#include <vector>

#include "backspring/action/turns.hpp"
#include "backspring/strength/plastic_spring.hpp"

namespace backspring {

/// What the first openings leave of a spring that yields over its crest.
struct PlasticSet {
    bool yielded = false;            ///< some of it yields; all else is 0 or unchanged if not
    double blade_angle_deg = 0.0;    ///< where the elastic spring would be worst stressed [deg]
    double elastic_force_n = 0.0;    ///< there, if it did not yield [N]
    double force_n = 0.0;            ///< there, yielding [N]
    FaceShift shift;                 ///< of the free working face, outward, after shakedown
    FaceShift shift_opened;          ///< of the free working face after the first opening
    double drop_pivot_mm = 0.0;      ///< free face away from the tang, pivot station [mm]
    double drop_dial_mm = 0.0;       ///< at the dial [mm]
    double drop_pad_start_mm = 0.0;  ///< at the pad's rear edge [mm]
    double drop_pad_end_mm = 0.0;    ///< at the pad's front edge [mm]
    double preload_before_mm = 0.0;  ///< interference at the pivot station, as fitted [mm]
    double preload_opened_mm = 0.0;  ///< after the first opening [mm]
    double preload_after_shakedown_mm = 0.0;  ///< once an opening changes nothing more [mm]
    int openings_to_shakedown = 0;            ///< openings that still changed it
    bool shakes_down = true;                  ///< not so: it goes on yielding with every opening
    int contacts = 0;                         ///< looked for on the way, a measure of the work
    bool folded = false;             ///< a section yields right through and bends as a hinge
    std::vector<PlasticZone> zones;  ///< where it has yielded, from the rear
};

/// The permanent set that the travel leaves, for elastic, perfectly plastic steel.
///
/// The tang holds the spring out however much force that takes: at each angle that would go beyond
/// yielding the forces are those at which elastic and plastic movement together make room for the
/// tang. Each section keeps the curvature of the greatest moment it has borne; unloading and all
/// bending below that moment are elastic. An opening takes the pieces of the travel in turn, each
/// as the blade passes: from the angle that bends it most as far ahead as it yields to the angle
/// that bends it most at its root, at three stops and along a parabola between them, then wherever
/// the spring as set by now is still bent further by 2e-4 of the set. An opening in fine steps
/// leaves the same set within 1e-3, which a test holds; 2e-3 was the most seen of other springs.
/// Openings are repeated until one changes nothing.
///
/// @param spring     of the travel
/// @param travel     of the design as fitted, from closed on
/// @param yield_mpa  [MPa], > 0; the elastic limit tells when set begins, the proof stress how far
///                   it goes
/// Where a section yields right through, the spring folds there and turns as on a hinge; that and
/// a set that grows with every opening are results.
///
/// @throws InvalidInput  a yield stress not above 0
/// @source elastic, perfectly plastic bending; unit-load theorem
/// @note   costs next to nothing where nothing yields; sections are net of pin holes but without
///         notch factors, which yield locally and leave no set worth mention
/// @note   quadrature is good to 1e-4 of the set, 0.5 % where a hole lies off the mid-line
/// @note   the face is taken as straight ahead of all that yielded, so a zone that reaches under
///         the pad bends it a little behind the touch
[[nodiscard]] PlasticSet plastic_set(const Spring& spring, const Turns& travel, double yield_mpa);

/// The same for several yield stresses, as for the ends of a band: what they share is done once.
///
/// @throws InvalidInput  a yield stress not above 0
[[nodiscard]] std::vector<PlasticSet> plastic_sets(const Spring& spring,
                                                   const Turns& travel,
                                                   std::span<const double> yields_mpa);

/// The same where it is known at which contact of the travel the elastic spring is stressed most.
[[nodiscard]] std::vector<PlasticSet> plastic_sets(const Spring& spring,
                                                   const Turns& travel,
                                                   const Contact& worst,
                                                   std::span<const double> yields_mpa);

/// A joint whose free face has moved.
[[nodiscard]] Joint with_shift(const Joint& joint, const FaceShift& shift);

/// Moves the free face of a joint from where it is in another that is alike but for that.
void set_shift(Joint& joint, const Joint& fitted, const FaceShift& shift);

/// Greatest torque against opening before and after a set.
struct PeakTorques {
    double before_nmm = 0.0;  ///< as fitted, friction included [N mm]
    double after_nmm = 0.0;   ///< with the face as the set leaves it [N mm]
};

/// Greatest torque against opening before and after a set, over a travel.
[[nodiscard]] PeakTorques peak_torques(const Turns& travel, const PlasticSet& set);

}  // namespace backspring

#pragma once

#include <array>
#include <optional>

#include "backspring/steel/elastic.hpp"

namespace backspring {

/// What liners are made of.
enum class LinerMetal {
    brass,          ///< cartridge brass, 110 GPa
    nickel_silver,  ///< 120 GPa
    stainless,      ///< AISI 420, 190 GPa
    steel,          ///< plain carbon steel, 205 GPa
    titanium,       ///< Ti-6Al-4V, 110 GPa
};

/// Young's modulus and Poisson's ratio of a liner's metal.
///
/// @source makeitfrom-liners; handbook-values for plain carbon steel
[[nodiscard]] Elastic liner_elastic(LinerMetal metal);

/// What holds the pins: liners, and scales where they are stated, or a measured number.
struct Frame {
    LinerMetal liner_metal = LinerMetal::brass;  ///< of both liners
    std::optional<double> liner_thickness_mm;    ///< of one liner [mm]
    std::optional<double> liner_height_mm;       ///< back edge to belly edge, at the pins [mm]
    std::optional<double> liner_modulus_mpa;     ///< in place of the metal's own [MPa]
    std::optional<double> scale_thickness_mm;    ///< of one scale, as high as the liner [mm]
    std::optional<double> scale_modulus_mpa;     ///< Young's modulus of the scales [MPa]
    /// The middle pin's movement from the line through rear pin and pivot, per force on it.
    std::optional<double> seat_mm_per_n;

    /// Whether anything is stated that gives.
    [[nodiscard]] bool stated() const { return seat_mm_per_n || liner_thickness_mm; }
};

/// A pin in both liners.
struct PinSeat {
    double x_mm = 0.0;         ///< station [mm]
    double diameter_mm = 0.0;  ///< 0: not known, then its hole does not give [mm]
    double depth_mm = 0.0;     ///< back edge of the liner to the pin's centre [mm]
};

/// The pins of a frame. Its outermost pins are the line that all movements are counted from.
struct FramePins {
    PinSeat middle;                    ///< at station 0
    PinSeat rear;                      ///< of the spring, behind it
    PinSeat pivot;                     ///< ahead of the middle pin
    std::optional<PinSeat> far_pivot;  ///< of a blade at the other end, behind the rear pin
};

/// A hole in a beam: how much more it turns there per moment.
struct BeamHole {
    double x_mm = 0.0;              ///< station [mm]
    double turn_rad_per_nmm = 0.0;  ///< [rad/(N mm)]
};

/// Both liners with their scales as one straight beam on its outermost pins.
struct LinerBeam {
    double start_mm = 0.0;               ///< station of its rear support [mm]
    double end_mm = 0.0;                 ///< station of its front support [mm]
    double bending_nmm2 = 0.0;           ///< E I [N mm2]; 0: it does not bend
    double shear_n = 0.0;                ///< kappa G A [N]
    std::array<BeamHole, 2> holes = {};  ///< of middle and rear pin
};

/// How a frame gives: movements of pins, outward, for outward forces on the liners.
struct FrameGive {
    double middle_mm_per_n = 0.0;     ///< middle pin for a force on it [mm/N]
    double rear_mm_per_n = 0.0;       ///< rear pin for a force on it [mm/N]
    double cross_mm_per_n = 0.0;      ///< one of them for a force on the other [mm/N]
    double pivot_mm_per_n = 0.0;      ///< pivot for a force on it [mm/N]
    double far_pivot_mm_per_n = 0.0;  ///< the other end's pivot [mm/N]
    LinerBeam liners = {};            ///< the line of the liners' edge under load
};

/// Reduces a frame to what pins and edge do under forces on the pins.
///
/// Both liners bend and shear in their own plane as one beam on the outermost pins; at a pin hole
/// the net section counts with 1.75 of its loss, for stress flows round the hole; the hole gives by
/// beta / (2 E t). Near an edge, e the distance to it and r the hole's radius:
/// beta = 0.82 (2 e/H) + 2.33 / (e/r - 0.515) where the pin presses towards that edge (less
/// (2 e/H)^4 of the second term, which is gone at mid-height). A pin's own bending is left out.
///
/// A stated number stands for the middle pin alone, and the liners' edge bends as an even beam does
/// that gives as much.
///
/// @param frame  stated
/// @source timoshenko-beam; the numbers of the hole are fitted to plane-stress models of liners, of
///         which tests/oracle/liner_plate.py is the program: seat within 3 %
/// @note   even height; of several pivots at one end the farthest; liners alone bear at the holes
[[nodiscard]] FrameGive make_frame_give(const Frame& frame, const FramePins& pins);

/// Movement of the middle pin from the line through rear pin and pivot, per force on it, as the
/// spring's three forces make it: [mm/N].
///
/// @param span_mm   middle pin to rear pin [mm]
/// @param pivot_mm  middle pin to pivot [mm]
/// @note  with blades at both ends, the same between the two outermost pins
[[nodiscard]] double seat_mm_per_n(const FrameGive& give, double span_mm, double pivot_mm);

/// Movement and slope of the liners' edge at a station per outward force on a pin.
struct EdgeGive {
    double mm_per_n = 0.0;   ///< [mm/N]
    double rad_per_n = 0.0;  ///< [rad/N]
};

/// How the liners' edge moves where a force acts on them.
///
/// @param x_mm   station of the edge [mm]
/// @param xi_mm  station of the force, between the supports [mm]
/// @source timoshenko-beam; beyond its supports the beam stays straight, at a hole it kinks
[[nodiscard]] EdgeGive edge_give(const LinerBeam& liners, double x_mm, double xi_mm);

/// The liners' edge beside a spring under forces on its front end.
struct EdgeUnder {
    EdgeGive per_force;   ///< per force [mm/N, rad/N]
    EdgeGive per_moment;  ///< per moment of the forces about the middle pin [1/N, rad/(N mm)]
};

/// How the edge moves from the pivot, of which the spring's own movement is counted, too.
///
/// The dents of the holes are local and out of sight: the edge goes with the pins, so that the back
/// is flush with it at the middle pin whatever the force. For a hand-size knife that is within
/// 0.0003 mm at the dial.
///
/// @param span_mm  middle pin to rear pin [mm]
/// @param x_mm     station of the edge [mm]
[[nodiscard]] EdgeUnder edge_under(const FrameGive& give, double span_mm, double x_mm);

}  // namespace backspring

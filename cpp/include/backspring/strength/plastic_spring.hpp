#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "backspring/spring/bending.hpp"
#include "backspring/spring/flexibility.hpp"
#include "backspring/strength/elastic_plastic.hpp"
#include "backspring/strength/plastic_taper.hpp"

namespace backspring {

/// A place where something holds the spring away from its free shape.
struct Hold {
    double x_mm = 0.0;     ///< station, ahead of the middle pin [mm]
    double rise_mm = 0.0;  ///< outward from the free shape [mm]
};

/// How the free working face has moved, outward positive: a straight line ahead of all that
/// yielded.
struct FaceShift {
    double height_mm = 0.0;  ///< of the line at the middle pin [mm]
    double slope = 0.0;      ///< of the line

    /// Rise at a station [mm].
    [[nodiscard]] double at_mm(double x_mm) const { return height_mm + slope * x_mm; }
};

/// A stretch of the spring that has yielded.
struct PlasticZone {
    double from_mm = 0.0;          ///< first station [mm]
    double to_mm = 0.0;            ///< last station [mm]
    double deepest_mm = 0.0;       ///< station where it is deepest [mm]
    double depth_mm = 0.0;         ///< there, from the outer fibre [mm]
    std::optional<double> strain;  ///< there, in the outer fibre; none where it kinks as a hinge
    double turn_rad = 0.0;         ///< lasting turn within half a thickness of there [rad]
    double residual_surface_mpa =
        0.0;  ///< there, once unloaded; below 0: against the loading [MPa]
};

/// Moments no greater than a straight line from the middle pin to a station ahead of it, and
/// falling beyond.
struct MomentLine {
    double root_nmm = 0.0;   ///< at the middle pin [N mm]
    double ahead_nmm = 0.0;  ///< at the station [N mm]
    double ahead_mm = 0.0;   ///< the station [mm], > 0

    /// At a station ahead of the middle pin; behind it as at the pin [N mm].
    [[nodiscard]] double most_nmm(double x_mm) const {
        return std::lerp(root_nmm, ahead_nmm, std::clamp(x_mm / ahead_mm, 0.0, 1.0));
    }
};

/// A spring that remembers how far each section has been bent.
class PlasticSpring {
  public:
    /// @param end_mm     station that nothing loads it ahead of [mm]
    /// @param yield_mpa  [MPa], > 0
    PlasticSpring(const Spring& spring, double end_mm, double yield_mpa);

    /// With what is already known of the same spring, where moments below a line make it yield.
    PlasticSpring(const Spring& spring,
                  double end_mm,
                  Flexibility flexibility,
                  double yield_mpa,
                  const MomentLine& greatest);

    /// The same spring of other steel, not yet bent.
    [[nodiscard]] PlasticSpring with_yield(double yield_mpa) const;

    /// From now on leaves aside the sections that moments below a line never make yield.
    void leave_aside(const MomentLine& greatest);

    /// How far loads bend the worst section beyond what it bears elastically, from what it has
    /// borne already: at most 1 where all answer elastically.
    [[nodiscard]] double beyond_elastic(std::span<const Load> loads) const;

    /// Forces at which the spring, bent from what it is now, stands at the holds; one or two.
    [[nodiscard]] std::vector<Load> forces(std::span<const Hold> holds) const;

    /// Shift of the face as it is let go now.
    [[nodiscard]] const FaceShift& shift() const { return shift_; }

    /// Shift of the face when it is let go after these loads.
    ///
    /// @param per_n  how fast it grows with each load, where asked for [1/N]
    [[nodiscard]] FaceShift shift_after(std::span<const Load> loads,
                                        std::span<FaceShift> per_n = {}) const;

    /// The foremost station at which loads make it yield further [mm]; 0 where none does.
    [[nodiscard]] double yields_upto_mm(std::span<const Load> loads) const;

    /// Bends it for good.
    void bend(std::span<const Load> loads);

    /// Bends it for good by each of several forces, one after another.
    void bend_by_each(std::span<const Load> forces);

    /// By how much loads could grow, or must fall, for a first section to turn further as a hinge.
    [[nodiscard]] double share_to_hinge(std::span<const Load> loads) const;

    /// Whether the loads are less than the plastic moment of every section.
    [[nodiscard]] bool bears(std::span<const Load> loads) const;

    /// Where it has yielded so far.
    [[nodiscard]] std::vector<PlasticZone> zones() const;

  private:
    /// A place of the quadrature along a hole, or where the width changes.
    struct Node {
        double x_mm;
        double length_mm;  ///< of spring it stands for
        PlasticSection section;
        double share_behind;           ///< of the root's moment, between the pins; else 1
        double elastic_nmm;            ///< moment up to which it answers elastically
        double borne_nmm = 0.0;        ///< greatest moment so far, let go since
        double bent_nmm = 0.0;         ///< the same, not yet let go
        double residual_per_mm = 0.0;  ///< curvature that stays of it
    };

    /// How far moments along a straight line bend a section, of what it bears elastically.
    struct Share {
        double of_force_mm;  ///< of the line's fall per mm, taken away
        double of_root;      ///< of the root's moment
    };

    /// The greatest moments of what it has borne and of some loads.
    struct Greatest {
        std::vector<MomentPart> ahead;
        MomentPart behind;  ///< of the middle pin, up to the rear pin

        [[nodiscard]] std::span<const MomentPart> along(const PlasticTaper& taper) const {
            return taper.from_mm < 0.0 ? std::span(&behind, 1) : std::span(ahead);
        }
    };

    void add_stretches(const Spring& spring,
                       double end_mm,
                       double yield_mpa,
                       const MomentLine* greatest);
    void add_stretch(const Stretch& stretch,
                     double width_mm,
                     double yield_mpa,
                     const MomentLine* greatest);
    void add_node(
        const Stretch& stretch, double width_mm, double yield_mpa, double x_mm, double share_mm);
    [[nodiscard]] double share_behind(double x_mm) const;
    [[nodiscard]] static double moment_nmm(std::span<const Load> loads, const Node& node);
    [[nodiscard]] Greatest greatest_with(std::span<const MomentPart> moments) const;
    [[nodiscard]] double borne_nmm(double x_mm) const;
    void find_foremost();
    void add_shares(const PlasticTaper& taper, std::vector<Share>& shares) const;
    [[nodiscard]] double beyond_elastic(const StraightMoment& moment) const;
    static void add_turn(FaceShift& shift, const Node& node, double turn_rad) {
        shift.slope += turn_rad * node.share_behind;
        if (node.x_mm > 0.0) shift.height_mm -= turn_rad * node.x_mm;
    }
    [[nodiscard]] static double unit_moment_mm(const Node& node, double at_mm) {
        return node.x_mm < 0.0 ? at_mm * node.share_behind : std::max(at_mm - node.x_mm, 0.0);
    }
    /// Curvature that stays of a section after a moment, and all that it bore before.
    [[nodiscard]] double residual_after(const Node& node, double moment_nmm) const;
    void bear(std::span<const Load> loads);
    void let_go();
    void add_tapers(const Greatest& most,
                    std::span<const Load> loads,
                    double upto_mm,
                    FaceShift& shift,
                    std::span<FaceShift> per_n) const;
    [[nodiscard]] double set_mm(std::span<const Load> loads, double at_mm) const;
    [[nodiscard]] double movement_mm(std::span<const Load> loads, double at_mm) const;
    [[nodiscard]] double force_n(const Hold& hold, const Load& other) const;
    [[nodiscard]] std::span<const Node> watched() const;
    [[nodiscard]] Node node_at(const PlasticTaper& taper, double x_mm) const;
    [[nodiscard]] std::vector<Node> sampled() const;
    [[nodiscard]] PlasticZone zone(std::span<const Node> all,
                                   std::size_t first,
                                   std::size_t last) const;
    [[nodiscard]] double turn_rad(const Node& about, const Span& zone) const;

    Flexibility flexibility_;
    Elastic elastic_;
    double rear_pin_mm_ = 0.0;           ///< 0 without one
    FaceShift shift_, shift_of_nodes_;   ///< of all that it has borne
    std::vector<Node> nodes_;            ///< from the rear
    std::vector<PlasticTaper> tapers_;   ///< all else, from the rear
    std::vector<PlasticTaper> watched_;  ///< those that can yield
    Greatest borne_;
    std::vector<Share> foremost_;  ///< of the sections that can yield
    std::size_t first_ = 0;        ///< of the nodes that can yield
    std::size_t count_ = 0;        ///< of those, from the first to the last
};

}  // namespace backspring

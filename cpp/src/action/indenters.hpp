#pragma once

#include <optional>
#include <span>
#include <vector>

#include "backspring/action/contact.hpp"
#include "backspring/tang/envelope.hpp"

namespace backspring::detail {

/// A stop that presses on the end of the spring meanwhile.
struct Pushed {
    const Flexibility& flexibility;
    const EndStop& stop;
    double force_n;

    /// What it does to the face at a station.
    [[nodiscard]] Compliance at(double x_mm) const;
    [[nodiscard]] Compliance at(const BeamPlace& place) const;
    /// Its moment about the pin.
    [[nodiscard]] double moment_nmm() const;
};

/// A convex outline over one end of the spring, which bears with at most one force.
struct Indenter {
    TurnedOutline outline;
    double pivot_mm;
    Pad pad;
    double face_mm;                  ///< free face above its own pivot's height
    double face_slope;               ///< with the root's turn in it
    Part part;                       ///< blade and kick; the search finds arc and flat
    const Pushed* pushed = nullptr;  ///< the stop on this end, if it presses

    [[nodiscard]] double face_at_mm(double x) const {
        const double free = face_mm + face_slope * x;
        return pushed ? free + pushed->at(x).mm_per_n : free;
    }
    [[nodiscard]] double face_slope_at(double x) const {
        return pushed ? face_slope + pushed->at(x).rad_per_n : face_slope;
    }
    [[nodiscard]] double overlap_mm(const Touch& touch) const {
        return touch.height_mm - face_at_mm(touch.x_mm);
    }
};

/// Share of the distance between pin and pivot below which a length beside it is rounding: heights
/// and levers are differences of lengths as large, each known to some of its last bits.
inline constexpr double kRoundingOfLength = 3e-14;

/// Whether an indenter stands in the face by more than rounding.
[[nodiscard]] inline bool stands_in(const Indenter& indenter, double overlap_mm) {
    return overlap_mm > kRoundingOfLength * indenter.pivot_mm;
}

/// A part that a search found, as one of this indenter's blade.
[[nodiscard]] inline Part named(const Indenter& indenter, Part part) {
    part.blade = indenter.part.blade;
    part.kick = indenter.part.kick;
    return part;
}

/// A tang's body as it stands.
///
/// @param tang, pushed  outlive the indenter
[[nodiscard]] Indenter body_of(const Mounted& tang,
                               int blade,
                               double blade_angle_deg,
                               const Pushed* pushed = nullptr);

/// Its kick, if that reaches the free face anywhere.
///
/// @param body  of the same tang
[[nodiscard]] std::optional<Indenter> kick_in_reach(const Mounted& tang, const Indenter& body);

/// Adds a tang's body and its kick.
///
/// @param tang, pushed  outlive the indenters
void add_indenters(std::vector<Indenter>& indenters,
                   const Mounted& tang,
                   int blade,
                   double blade_angle_deg,
                   const Pushed* pushed = nullptr);

/// About where an outline bears: the search for it starts there.
struct PlaceGuess {
    int arc;               ///< of the outline, or the one ahead of the flat
    bool flat;             ///< on the flat behind that arc
    double place;          ///< slope on an arc, way ahead of the pivot on a flat [mm]
    bool at_edge = false;  ///< of the pad: that is the place
};

/// Where an indenter touches the spring when nothing else does; nothing where it does not.
///
/// @param guess  about where, if that is known; it only spares looks
[[nodiscard]] std::optional<Touch> bear_alone(const Flexibility& flexibility,
                                              const Indenter& indenter,
                                              const PlaceGuess* guess = nullptr);

/// See BearingSearch::miss_at(), of an indenter that bears alone.
[[nodiscard]] double miss_at(const Flexibility& flexibility,
                             const Indenter& indenter,
                             const SurfacePoint& point);

/// A indenter and where it bears.
struct Borne {
    const Indenter* indenter;
    Touch touch;
};

/// Which of several indenters bear on one end of a spring, and where.
///
/// The forces are the nonnegative ones of most complementary energy: an indenter comes in where it
/// would overlap the bent face and goes when its force would pull, the energy rising each time. The
/// places then settle in turn, each where its own force stores most, the others giving way.
///
/// @param earlier  what bore at nearly the same place of the spring; it only spares looks
/// @source C. L. Lawson and R. J. Hanson, Solving Least Squares Problems, 1974 (NNLS), for forces
[[nodiscard]] std::vector<Borne> bear(const Flexibility& flexibility,
                                      std::span<const Indenter> indenters,
                                      const std::vector<Borne>& earlier = {});

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

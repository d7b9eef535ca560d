#pragma once

#include <Eigen/Core>
#include <array>

#include "backspring/action/friction.hpp"
#include "bearer.hpp"

namespace backspring::detail {

/// What holds the blade at its angle.
enum class Seat {
    held,      ///< the hand or the stop
    free,      ///< torque is nothing there
    straddled  ///< a rigid spring bears at two places, on either side of the pivot
};

/// A contact and the parts of the tang that bear in it.
struct State {
    Contact contact;
    Seat seat = Seat::held;
    std::array<Bearer, 2> bearers{};
};

/// Names the parts that bear.
[[nodiscard]] State make_state(const Joint& joint, const Contact& contact, Seat seat);

/// A blade at rest under a rigid spring: where its torque jumps through nothing it is straddled.
[[nodiscard]] State make_resting_state(const Joint& joint, const Contact& contact);

/// Places of the few numbers through which a contact sees the rest of the design.
namespace element {
/// The unknowns: blade angle, a place on the tang for each touch, lean of a rigid spring.
enum : int { turn, place, lean = place + 2, touch };
/// Of each touch: arc, integrals up to it, shear at it, the pad's edge.
enum : int { u, w, radius, a0, a1, a2, shear, local_shear, edge, per_touch };
/// Of the spring and the face; of the liners' edge under the dial what it moves per force and per
/// moment of the touches.
enum : int {
    root = touch + 2 * per_touch,
    face,
    face_slope,
    pivot,
    dial,
    dial_a0,
    dial_a1,
    dial_a2,
    dial_shear,
    edge_force,
    edge_moment,
    friction_spring,
    friction_pivot,
    pivot_pin,
    count
};
/// Place of a number of touch k.
[[nodiscard]] constexpr int of_touch(int k, int number) { return touch + k * per_touch + number; }
}  // namespace element

/// Numbers by place; the unknowns are left 0.
using Elements = Eigen::Array<double, element::count, 1>;

/// Reads the numbers off a joint, at the stations where the state's touches and dial are.
///
/// @param joint    the state's own joint, or one that differs a little
/// @param dial_mm  station of the state's own dial [mm]
[[nodiscard]] Elements read_elements(const Joint& joint,
                                     const Friction& friction,
                                     const State& state,
                                     double dial_mm);

/// Of these what the spring is to the state's touches.
///
/// @param at_dial  integrals up to the dial
void read_spring(Elements& elements,
                 const Flexibility& flexibility,
                 const State& state,
                 const BendingIntegrals& at_dial);

/// Of these what tang, pad and face are to the touches, and where the dial stands.
void read_tang(Elements& elements, const Mounted& tang, const State& state, double dial_mm);

/// Of these the friction.
void read_friction(Elements& elements, const Friction& friction);

/// How fast the integrals grow along the spring.
struct Rates {
    double bending;      ///< 1/(E I) [1/(N mm2)]
    double shear;        ///< 1/(kappa G A) [1/N]
    double shear_slope;  ///< of the latter along the spring, away from holes
};

[[nodiscard]] Rates rates_at(const Flexibility& flexibility, double x_mm);

/// The liners' edge under the dial; it does not move without a frame.
[[nodiscard]] EdgeUnder dial_edge(const Joint& joint, double dial_mm);

/// The arc a bearer names.
[[nodiscard]] const Arc& arc_of(const Mounted& tang, const Bearer& bearer);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

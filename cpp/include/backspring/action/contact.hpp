#pragma once

#include <array>
#include <span>
#include <vector>

#include "backspring/action/joint.hpp"
#include "backspring/core/error.hpp"
#include "backspring/spring/bending.hpp"

namespace backspring {

/// The part of a blade that bears.
struct Part {
    int blade = 0;      ///< 0 the joint's own, then those beside it, then those at the far end
    int arc = 0;        ///< of the tang's outline, or the one ahead of the flat
    bool flat = false;  ///< the flat behind that arc
    bool kick = false;  ///< the nose of the kick
};

/// One place where a tang bears on the spring.
struct Touch {
    double x_mm = 0.0;       ///< station [mm]
    double height_mm = 0.0;  ///< above the pivot, outward [mm]
    double slope = 0.0;      ///< of the face the force stands square to
    double force_n = 0.0;    ///< on the spring, outward [N]
    Part part{};             ///< what bears
};

/// The force of an open blade's stop on the spring's end.
struct StopForce {
    double force_n = 0.0;   ///< along the spring, towards the pins [N]
    double lever_mm = 0.0;  ///< about the pivot [mm]
};

/// What the other blades on the spring do meanwhile.
struct Others {
    std::vector<Touch> beside;       ///< on this end of the spring
    std::vector<Touch> far;          ///< on the other end, stations below 0 as seen from this one
    std::vector<double> angles_deg;  ///< how each stands, as Part::blade counts, less one [deg]
    double root_turn_rad = 0.0;      ///< how far the other end turns this root, + outward [rad]
    double far_root_turn_rad = 0.0;  ///< how far this end turns the other root [rad]
    double root_lift_mm = 0.0;       ///< how far the other end lifts this root, by the frame [mm]
    double far_root_lift_mm = 0.0;   ///< how far this end lifts the other root [mm]
    bool all_rest = true;            ///< false: one that is free to seat has no rest
    int taken_along = 0;             ///< the one beside that turns with this blade; 0: none
};

/// The joint at one blade angle.
struct Contact {
    double blade_angle_deg = 0.0;    ///< [deg]
    std::array<Touch, 2> touches{};  ///< of this blade; the first `count` are real
    int count = 0;                   ///< 0 lifted off, 1, or 2 with a kick
    double force_n = 0.0;            ///< total of this blade on the spring [N]
    double energy_nmm = 0.0;         ///< strain energy of the whole spring [N mm]
    double torque_nmm = 0.0;         ///< dU/dtheta of this blade, + resists opening [N mm]
    Others others{};                 ///< nothing for a blade alone on its spring
    StopForce stop{};                ///< of an open blade at rest on its stop

    [[nodiscard]] std::span<const Touch> all() const& {
        return {touches.data(), static_cast<std::size_t>(count)};
    }
    /// Not of one that is gone before they are read.
    std::span<const Touch> all() const&& = delete;
};

/// Forces of a contact on the beam, few enough to lie in place.
class Loads {
  public:
    /// Four blades at either end, each with a kick, and a stop.
    static constexpr std::size_t kMost = 17;

    Loads() {}  // leaves the places that hold no load as they are
    void push_back(const Load& load) {
        if (count_ == kMost) throw Error("more forces on a spring than it has places for");
        loads_[count_++] = load;
    }
    [[nodiscard]] Load* data() { return loads_; }
    [[nodiscard]] const Load* data() const { return loads_; }
    [[nodiscard]] std::size_t size() const { return count_; }
    [[nodiscard]] Load* begin() { return loads_; }
    [[nodiscard]] Load* end() { return loads_ + count_; }
    [[nodiscard]] const Load* begin() const { return loads_; }
    [[nodiscard]] const Load* end() const { return loads_ + count_; }

  private:
    union {
        Load loads_[kMost];
    };
    std::size_t count_ = 0;
};

/// Where the tang bears on the spring at a blade angle, and how hard.
///
/// Every tang's body and every kick is an indenter: a convex outline with at most one point force.
/// The places make the strain energy stationary, which on a smooth face means that outline and
/// deformed face have one slope (shear: the mean of both sides of the force); otherwise the force
/// acts at an edge of the pad. Found to rounding error, never on a grid, so that torque is
/// dU/dtheta. Another blade that is free to seat stands where its own torque vanishes.
///
/// @param blade_angle_deg  0 closed, 180 open; -45 to 225
/// @throws OutOfRange      outside that range
/// @source unilateral contact as least complementary energy
/// @note   on a flat, shear spreads the pressure over about half a thickness: under 0.0002 mm in
///         readings and 0.02 % in force against one point force on an ordinary spring
/// @note   two blades that press in one place share their force; one whose flat lies along the
///         own one's is taken along, and the torque, what the hand feels, is that of both
[[nodiscard]] Contact contact_at(const Joint& joint, double blade_angle_deg);

/// The joint with its other blades held where they stand in a contact.
[[nodiscard]] Joint with_others_held(Joint joint, const Contact& contact);

/// Every blade of a joint as it bears in a contact: its own, those beside it, those at the far end.
///
/// Energy is of the whole spring, stations are each blade's own; what others do is left out.
[[nodiscard]] std::vector<Contact> blades_of(const Joint& joint, const Contact& contact);

/// Outward movement of the spring at a station.
///
/// @returns  [mm], from the free shape; nothing between two pins, where the small bulge is left out
[[nodiscard]] double deflection_mm(const Joint& joint, const Contact& contact, double x_mm);

/// The same of a known place ahead of the middle pin.
[[nodiscard]] double deflection_mm(const Joint& joint,
                                   const Contact& contact,
                                   const BeamPlace& place);

/// Outward movement of the back at a station from the liners' edge beside it: what a dial on the
/// liners, or a finger, finds.
///
/// @returns  [mm]; deflection_mm() where no frame is stated
[[nodiscard]] double back_mm(const Joint& joint, const Contact& contact, double x_mm);

/// The same of a unit force at another station, both ahead of the middle pin [mm/N].
[[nodiscard]] double back_per_force(const Joint& joint, double x_mm, double xi_mm);

/// How fast back_mm() grows along the spring ahead of the middle pin, in contacts of a blade alone
/// or beside others at its end.
[[nodiscard]] double back_slope(const Joint& joint, const Contact& contact, double x_mm);

/// Forces of all blades as loads on the beam, in rising order of their stations.
[[nodiscard]] Loads loads(const Contact& contact);

/// Those of this end of the spring.
[[nodiscard]] Loads loads_ahead(const Contact& contact);

/// Bending moment at a station ahead of the middle pin, positive where it tears the belly [Nmm].
[[nodiscard]] double moment_ahead_nmm(const Contact& contact, double station_mm);

}  // namespace backspring

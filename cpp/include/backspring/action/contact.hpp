#pragma once

#include <array>
#include <span>

#include "backspring/action/joint.hpp"
#include "backspring/spring/bending.hpp"

namespace backspring {

/// One place where the tang bears on the spring.
struct Touch {
    double x_mm = 0.0;       ///< station [mm]
    double height_mm = 0.0;  ///< above the pivot, outward [mm]
    double slope = 0.0;      ///< of the face the force stands square to
    double force_n = 0.0;    ///< on the spring, outward [N]
};

/// The joint at one blade angle.
struct Contact {
    double blade_angle_deg = 0.0;    ///< [deg]
    std::array<Touch, 2> touches{};  ///< the first `count` are real
    int count = 0;                   ///< 0 lifted off, 1, or 2 with a kick
    double force_n = 0.0;            ///< total on the spring [N]
    double energy_nmm = 0.0;         ///< strain energy [N mm]
    double torque_nmm = 0.0;         ///< dU/dtheta, + resists opening [N mm]

    [[nodiscard]] std::span<const Touch> all() const {
        return {touches.data(), static_cast<std::size_t>(count)};
    }
};

/// Where the tang bears on the spring at a blade angle, and how hard.
///
/// The tang's body and its kick bear with at most one point force each. The places make the strain
/// energy stationary, which on a smooth face means that outline and deformed face have one slope
/// (shear: the mean of both sides of the force); otherwise the force acts at an edge of the pad.
/// Found to rounding error, never on a grid, so that torque is dU/dtheta.
///
/// @param blade_angle_deg  0 closed, 180 open; -45 to 225
/// @throws OutOfRange      outside that range
/// @source unilateral contact as least complementary energy
/// @note   on a flat, shear spreads the pressure over about half a thickness: under 0.0002 mm in
///         readings and 0.02 % in force against one point force on an ordinary spring
[[nodiscard]] Contact contact_at(const Joint& joint, double blade_angle_deg);

/// Outward movement of the spring at a station ahead of the middle pin.
///
/// @returns  [mm], from the free shape
[[nodiscard]] double deflection_mm(const Joint& joint, const Contact& contact, double x_mm);

/// Forces of a contact as loads on the beam.
[[nodiscard]] std::array<Load, 2> loads(const Contact& contact);

}  // namespace backspring

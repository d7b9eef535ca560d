#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

#include "backspring/action/contact.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/tang/envelope.hpp"

// What one contact, or one rest, must fulfil by itself.
namespace drawn {

using namespace backspring;

/// Largest torque of the travel, in steps of five degrees.
inline double torque_scale(const Joint& joint) {
    double largest = 0.0;
    for (double angle = -15.0; angle <= 185.0; angle += 5.0) {
        largest = std::max(largest, std::abs(contact_at(joint, angle).torque_nmm));
    }
    return largest;
}

/// Torque less central difference (fourth order) of the energy, as a share of the torque or of a
/// larger one; the closest of some steps.
inline double torque_error(const Joint& joint, double angle_deg, double scale_nmm) {
    const double torque = contact_at(joint, angle_deg).torque_nmm;
    const double scale = std::max(scale_nmm, std::abs(torque));
    if (scale == 0.0) return 0.0;
    const auto rise = [&](double h) {
        return contact_at(joint, angle_deg + h).energy_nmm -
               contact_at(joint, angle_deg - h).energy_nmm;
    };
    double least = 1e300;
    for (double h = 1e-2; h > 1e-5 && least > 1e-6 * scale; h *= 0.5) {
        const double rate = (8.0 * rise(h) - rise(2.0 * h)) / (12.0 * radians(h));
        least = std::min(least, std::abs(rate - torque));
    }
    return least / scale;
}

/// Whether each force pushes, where the tang touches the bent spring and runs along it.
inline bool touches_fit(const Joint& joint, const Contact& contact) {
    return std::ranges::all_of(contact.all(), [&](const Touch& touch) {
        double slope = joint.face_slope;
        for (const Touch& other : contact.all()) {
            slope += other.force_n * slope_per_force(joint.flexibility, touch.x_mm, other.x_mm);
        }
        const double face = joint.face_mm + joint.face_slope * touch.x_mm +
                            deflection_mm(joint, contact, touch.x_mm);
        const bool edge = touch.x_mm == joint.pad.start_mm || touch.x_mm == joint.pad.end_mm;
        return touch.force_n > 0.0 && std::abs(face - touch.height_mm) < 1e-9 &&
               (edge || std::abs(slope - touch.slope) < 1e-9);
    });
}

/// A place on the tang over the pad, and how far it stands above the free spring.
struct Above {
    double x_mm;
    double overlap_mm;
};

inline std::vector<Above> above_pad(const Joint& joint, const TurnedOutline& outline) {
    constexpr int places = 24;
    std::vector<Above> all;
    for (int i = 0; i <= places; ++i) {
        const double x = std::lerp(joint.pad.start_mm, joint.pad.end_mm, 1.0 * i / places);
        const auto top = outline.top_at(x - joint.pivot_mm);
        if (top) all.push_back({x, top->y_mm - joint.face_mm - joint.face_slope * x});
    }
    return all;
}

/// Most complementary energy of one force, or of one each on body and kick, on a coarse grid: by
/// the theorem of least energy of unilateral contact no bearing stores less.
inline double energy_of_some_forces(const Joint& joint, double blade_angle_deg) {
    const double turn = radians(blade_angle_deg) - std::numbers::pi;
    const std::vector<Above> body = above_pad(joint, TurnedOutline(joint.outline.body, turn));
    std::vector<Above> kick;
    if (joint.outline.kick) kick = above_pad(joint, TurnedOutline({&*joint.outline.kick, 1}, turn));
    const auto per_force = [&](const Above& a, const Above& b) {
        return deflection_per_force(joint.flexibility, a.x_mm, b.x_mm);
    };
    double most = 0.0;
    for (const std::vector<Above>& outline : {body, kick}) {
        for (const Above& a : outline) {
            const double g = std::max(a.overlap_mm, 0.0);
            most = std::max(most, 0.5 * g * g / per_force(a, a));
        }
    }
    for (const Above& a : body) {
        for (const Above& b : kick) {
            if (a.x_mm == b.x_mm || b.overlap_mm < 0.0) continue;
            const double own = per_force(a, a), cross = per_force(a, b), other = per_force(b, b);
            const double det = own * other - cross * cross;
            const double p = (other * a.overlap_mm - cross * b.overlap_mm) / det;
            const double q = (own * b.overlap_mm - cross * a.overlap_mm) / det;
            if (p > 0.0 && q > 0.0) {
                most = std::max(most, 0.5 * (p * a.overlap_mm + q * b.overlap_mm));
            }
        }
    }
    return most;
}

/// Whether a blade stays where it is said to rest: the energy is least there and, on either side,
/// the torque drives the blade back.
inline bool stays(const Joint& joint, const std::optional<Contact>& rest, double scale_nmm) {
    if (!rest || rest->count == 0) return true;
    constexpr double hair_deg = 1e-9;
    const auto holds = [&](double side) {
        const Contact beside = contact_at(joint, rest->blade_angle_deg + side * hair_deg);
        return beside.energy_nmm >= rest->energy_nmm * (1.0 - 1e-9) &&
               side * beside.torque_nmm > -1e-6 * scale_nmm;
    };
    return holds(1.0) && holds(-1.0);
}

}  // namespace drawn

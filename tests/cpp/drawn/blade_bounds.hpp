#pragma once

#include <Eigen/Dense>
#include <cmath>
#include <optional>
#include <vector>

#include "backspring/core/angle.hpp"
#include "backspring/tang/envelope.hpp"
#include "bounds.hpp"
#include "held.hpp"

// What one contact of several blades must fulfil by itself.
namespace drawn {

/// How the face under the own blade differs from that beside a point force of another one within a
/// twentieth of the thickness, where both pressures are even over so much of the spring: the mean
/// of |d + u| over the distance u of any two places in them is |d| + w (1 - |d|/w)^3/3.
struct Rounding {
    double lift_mm = 0.0, slope = 0.0;
};

inline Rounding rounding_at(const Joint& joint, const Contact& contact, double x_mm) {
    const Flexibility& spring = joint.flexibility;
    const double w = 0.05 * spring.shear_factor;  // lengths by what shear gives along them
    Rounding sum;
    for (const Touch& touch : contact.others.beside) {
        const double d =
            bending_integrals(spring, x_mm).shear - bending_integrals(spring, touch.x_mm).shear;
        if (!(std::abs(d) < w)) continue;
        const double left = 1.0 - std::abs(d) / w;
        const double rate = beam_place(spring, x_mm).shear_rad_per_n;
        sum.lift_mm -= 0.5 * touch.force_n * w * left * left * left / 3.0;
        if (d != 0.0) sum.slope += std::copysign(0.5 * touch.force_n * rate * left * left, d);
    }
    return sum;
}

/// Height of the bent face at a station of the own end.
inline double face_at(const Joint& joint, const Contact& contact, double x_mm) {
    return joint.face_mm + joint.face_slope * x_mm + deflection_mm(joint, contact, x_mm);
}

/// Its slope, under a force the mean of both sides.
inline double face_slope_at(const Joint& joint, const Contact& contact, double x_mm) {
    double slope = joint.face_slope + contact.others.root_turn_rad;
    for (const Load& load : loads_ahead(contact)) {
        slope += load.force_n * slope_per_force(joint.flexibility, x_mm, load.x_mm);
    }
    return slope;
}

/// Whether the own blade's forces push, where it touches the bent spring and runs along it.
inline bool own_touches_fit(const Joint& joint, const Contact& contact) {
    return std::ranges::all_of(contact.all(), [&](const Touch& touch) {
        const bool edge = touch.x_mm == joint.pad.start_mm || touch.x_mm == joint.pad.end_mm;
        const Rounding round = rounding_at(joint, contact, touch.x_mm);
        const double slope = face_slope_at(joint, contact, touch.x_mm) + round.slope;
        const double face = face_at(joint, contact, touch.x_mm) + round.lift_mm;
        return touch.force_n > 0.0 && std::abs(face - touch.height_mm) < 1e-9 &&
               (edge || std::abs(slope - touch.slope) < 1e-8);
    });
}

/// The spring without its shear, which on a flat lets the face dip beside a single force.
inline void take_shear_out(Flexibility& flexibility) {
    flexibility.shear_factor = 0.0;
    for (Stretch& stretch : flexibility.stretches) stretch.upto.shear = 0.0;
}

inline Joint without_shear(Joint joint) {
    take_shear_out(joint.flexibility);
    if (joint.far_end) take_shear_out(joint.far_end->flexibility);
    return joint;
}

/// Most by which the own tang stands out of the bent face anywhere on its pad.
inline double most_overlap_mm(const Joint& joint, const Contact& contact) {
    constexpr int places = 200;
    const double turn = radians(contact.blade_angle_deg) - std::numbers::pi;
    std::vector<TurnedOutline> outlines{TurnedOutline(joint.outline.body, turn)};
    if (joint.outline.kick)
        outlines.emplace_back(std::span<const Arc>{&*joint.outline.kick, 1}, turn);
    double most = -1.0;
    for (int i = 0; i <= places; ++i) {
        const double x = std::lerp(joint.pad.start_mm, joint.pad.end_mm, 1.0 * i / places);
        for (const TurnedOutline& outline : outlines) {
            const auto top = outline.top_at(x - joint.pivot_mm);
            if (top) most = std::max(most, top->y_mm - face_at(joint, contact, x));
        }
    }
    return most;
}

/// A place on some tang over its pad.
struct Place {
    bool far;
    double x_mm;
    double overlap_mm;  ///< above the free spring
};

/// Complementary energy of forces at some places, each at most: largest over all choices of which
/// of them push.
inline double energy_of_places(const Joint& joint, const std::vector<Place>& places) {
    const bool turns = joint.far_end && joint.far_end->turns;
    double most = 0.0;
    for (unsigned chosen = 1; chosen < (1U << places.size()); ++chosen) {
        std::vector<Place> some;
        for (std::size_t i = 0; i < places.size(); ++i) {
            if ((chosen >> i) & 1U) some.push_back(places[i]);
        }
        const auto n = static_cast<Eigen::Index>(some.size());
        const Eigen::Index m = n + (turns ? 1 : 0);
        Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(m, m);
        Eigen::VectorXd gaps = Eigen::VectorXd::Zero(m);
        for (Eigen::Index i = 0; i < n; ++i) {
            const Place& a = some[static_cast<std::size_t>(i)];
            gaps[i] = a.overlap_mm;
            if (turns) matrix(i, n) = matrix(n, i) = a.far ? -a.x_mm : a.x_mm;
            for (Eigen::Index j = 0; j < n; ++j) {
                const Place& b = some[static_cast<std::size_t>(j)];
                matrix(i, j) = a.far != b.far
                                   ? joint.far_end->cross_rad_per_nmm * a.x_mm * b.x_mm
                                   : deflection_per_force(
                                         a.far ? joint.far_end->flexibility : joint.flexibility,
                                         a.x_mm, b.x_mm);
            }
        }
        const Eigen::FullPivLU<Eigen::MatrixXd> solver(matrix);
        if (!solver.isInvertible() || solver.rcond() < 1e-11) continue;
        const Eigen::VectorXd forces = solver.solve(gaps);
        if (forces.head(n).minCoeff() < 0.0) continue;
        most = std::max(most, 0.5 * forces.head(n).dot(gaps.head(n)));
    }
    return most;
}

}  // namespace drawn

#include "backspring/action/friction_couple.hpp"

#include <Eigen/Dense>
#include <array>

#include "tent.hpp"
#include "twins.hpp"

namespace backspring {
namespace {

// The couple is a percent of the bending: a coarse lever does.
constexpr int kPieces = 8;

/// The touches that rub as the blade is turned: its own, and that of one taken along, which is
/// beside a single one.
struct Rubbing {
    std::array<Touch, 2> touches;
    int count;
};

Rubbing rubbing(const Contact& contact) {
    Rubbing all{contact.touches, contact.count};
    if (const Touch* along = touch_taken_along(contact)) {
        all.touches[static_cast<std::size_t>(all.count++)] = *along;
    }
    return all;
}

/// Drag of a unit force at each place, and how friction's share of it goes with a force there.
struct Drags {
    std::array<AxialPush, 2> pushes;
    double share;  ///< of the force, + towards the pins

    /// Of a unit force at a place, by its drag alone.
    [[nodiscard]] double added_mm_per_n(const Flexibility& flexibility, int i, double x_mm) const {
        const AxialPush& push = pushes[static_cast<std::size_t>(i)];
        return share * push_compliance(flexibility, push, x_mm).mm_per_n;
    }
};

Drags make_drags(const Spring& spring,
                 const Joint& joint,
                 const Contact& contact,
                 const Friction& friction,
                 bool opening) {
    Drags drags{{}, opening ? friction.spring : -friction.spring};
    const auto face = [&](const BeamPlace& place) {
        return joint.face_slope * place.x_mm + deflection_mm(joint, contact, place);
    };
    const Rubbing all = rubbing(contact);
    for (int i = 0; i < all.count; ++i) {
        const Touch& touch = all.touches[static_cast<std::size_t>(i)];
        const double at = touch.x_mm;
        const double face_there = face(beam_place(joint.flexibility, at));
        // Drag goes along the face that it rubs on, which leans.
        const auto lever = [&](const BeamPlace& place) {
            return face_there - touch.slope * (at - place.x_mm) - face(place) -
                   mid_line_mm(spring, joint.pad, place.x_mm);
        };
        drags.pushes[static_cast<std::size_t>(i)] =
            axial_push_by_places(spring, joint.flexibility, at, lever, kPieces);
    }
    return drags;
}

/// The contact with forces that fit its places again under their own drags.
Contact dragged(const Joint& joint, const Contact& contact, const Drags& drags) {
    const Rubbing all = rubbing(contact);
    const int n = all.count;
    const Flexibility& flexibility = joint.flexibility;
    Eigen::Matrix2d plain = Eigen::Matrix2d::Identity(), with_drag = plain;
    Eigen::Vector2d forces = Eigen::Vector2d::Zero();
    for (int i = 0; i < n; ++i) {
        const double x = all.touches[static_cast<std::size_t>(i)].x_mm;
        forces[i] = all.touches[static_cast<std::size_t>(i)].force_n;
        for (int j = 0; j < n; ++j) {
            const double at = all.touches[static_cast<std::size_t>(j)].x_mm;
            const bool beside = all.touches[0].part.blade != all.touches[1].part.blade && i != j;
            plain(i, j) = beside ? beside_compliance(flexibility, beam_place(flexibility, x),
                                                     beam_place(flexibility, at))
                                       .mm_per_n
                                 : deflection_per_force(flexibility, x, at);
            with_drag(i, j) = plain(i, j) + drags.added_mm_per_n(flexibility, j, x);
        }
    }
    forces = with_drag.partialPivLu().solve(plain * forces);
    Contact sliding = contact;
    sliding.force_n = sliding.torque_nmm = 0.0;
    for (int i = 0; i < n; ++i) {
        const bool own = i < contact.count;
        Touch& touch =
            own ? sliding.touches[static_cast<std::size_t>(i)] : *touch_taken_along(sliding);
        touch.force_n = forces[i];
        if (own) sliding.force_n += touch.force_n;
        sliding.torque_nmm +=
            touch.force_n * (touch.x_mm - joint.pivot_mm + touch.slope * touch.height_mm);
    }
    return sliding;
}

}  // namespace

Contact sliding_contact(const Spring& spring,
                        const Joint& joint,
                        const Contact& contact,
                        const Friction& friction,
                        bool opening) {
    return dragged(joint, contact, make_drags(spring, joint, contact, friction, opening));
}

double sliding_deflection_mm(const Spring& spring,
                             const Joint& joint,
                             const Contact& contact,
                             const Friction& friction,
                             bool opening,
                             double x_mm) {
    const Drags drags = make_drags(spring, joint, contact, friction, opening);
    const Contact sliding = dragged(joint, contact, drags);
    double sum = deflection_mm(joint, sliding, x_mm);
    const Rubbing all = rubbing(sliding);
    for (int i = 0; i < all.count; ++i) {
        const auto at = static_cast<std::size_t>(i);
        sum += all.touches[at].force_n * drags.added_mm_per_n(joint.flexibility, i, x_mm);
    }
    return sum;
}

FrictionCouple friction_couple(const Spring& spring,
                               const Joint& joint,
                               const Contact& contact,
                               const Friction& friction) {
    if (contact.count == 0 || friction.spring == 0.0) return {};
    Drags drags = make_drags(spring, joint, contact, friction, true);
    const double plain = friction_torque_nmm(contact, friction, joint.pivot_mm);
    const auto added = [&](bool opening) {
        drags.share = opening ? friction.spring : -friction.spring;
        const Contact sliding = dragged(joint, contact, drags);
        const double more = friction_torque_nmm(sliding, friction, joint.pivot_mm) - plain;
        return sliding.torque_nmm - contact.torque_nmm + (opening ? more : -more);
    };
    return {.opening_nmm = added(true), .closing_nmm = added(false)};
}

}  // namespace backspring

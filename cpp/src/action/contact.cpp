#include "backspring/action/contact.hpp"

#include <cmath>
#include <limits>
#include <numbers>

#include "backspring/core/angle.hpp"
#include "backspring/core/error.hpp"
#include "backspring/core/require.hpp"
#include "bearing.hpp"

namespace backspring {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
// Shares of the distance between middle pin and pivot.
constexpr double kTouching = 3e-14;  // overlap below this is rounding
constexpr double kKickSettled = 3e-15;

double face_mm(const Joint& joint, double x) { return joint.face_mm + joint.face_slope * x; }

double overlap_mm(const Joint& joint, const Touch& touch) {
    return touch.height_mm - face_mm(joint, touch.x_mm);
}

/// The spring with no other force on it.
struct FreeSpring {
    const Joint& joint;

    Answer operator()(double x) const {
        const Compliance own = compliance(joint.flexibility, x, x);
        return {face_mm(joint, x), joint.face_slope, own.mm_per_n, own.rad_per_n};
    }
};

/// The spring held out by a touch elsewhere, whose force gives way so that the touch stays.
struct HeldSpring {
    const Joint& joint;
    const Touch& at;
    double held_mm;   ///< overlap kept at the touch
    double mm_per_n;  ///< compliance at the touch

    HeldSpring(const Joint& j, const Touch& touch)
        : joint(j),
          at(touch),
          held_mm(overlap_mm(j, touch)),
          mm_per_n(deflection_per_force(j.flexibility, touch.x_mm, touch.x_mm)) {}

    Answer operator()(double x) const {
        const Compliance own = compliance(joint.flexibility, x, x);
        const Compliance cross = compliance(joint.flexibility, x, at.x_mm);
        const double share = cross.mm_per_n / mm_per_n;
        return {face_mm(joint, x) + held_mm * share,
                joint.face_slope + held_mm * cross.rad_per_n / mm_per_n,
                own.mm_per_n - cross.mm_per_n * share, own.rad_per_n - cross.rad_per_n * share};
    }

    /// Force at the touch when another one bears elsewhere.
    double force_n(const Touch& other) const {
        const double cross = deflection_per_force(joint.flexibility, at.x_mm, other.x_mm);
        return (held_mm - cross * other.force_n) / mm_per_n;
    }
};

using MaybeTouch = std::optional<Touch>;

MaybeTouch bear_alone(const Joint& joint, const TurnedOutline& outline) {
    const FreeSpring spring{joint};
    const Range range{0.5 * joint.pad.start_mm, kInfinity};
    MaybeTouch touch = BearingSearch(outline, joint.pivot_mm, range, spring).on(joint.pad);
    return touch && touch->force_n > 0.0 ? touch : std::nullopt;
}

/// Where an outline bears on a spring held by a touch: on the side of it that bends it more.
MaybeTouch bear_beside(const Joint& joint, const TurnedOutline& outline, const Touch& held) {
    const HeldSpring spring(joint, held);
    MaybeTouch best;
    double most_nmm = 0.0;
    for (const Range range : {Range{held.x_mm, kInfinity}, {0.5 * joint.pad.start_mm, held.x_mm}}) {
        const MaybeTouch touch =
            BearingSearch(outline, joint.pivot_mm, range, spring).on(joint.pad);
        if (!touch || touch->force_n <= 0.0) continue;
        const double overlap = touch->height_mm - spring(touch->x_mm).face_mm;
        if (overlap <= kTouching * joint.pivot_mm || touch->force_n * overlap <= most_nmm) continue;
        most_nmm = touch->force_n * overlap;
        best = touch;
    }
    return best;
}

/// The kick's place where its outline has the slope of the face under both forces.
MaybeTouch settle_kick(const Joint& joint,
                       const TurnedOutline& kick,
                       const Touch& nose,
                       const Touch& body) {
    const Compliance own = compliance(joint.flexibility, nose.x_mm, nose.x_mm);
    const Compliance cross = compliance(joint.flexibility, nose.x_mm, body.x_mm);
    const double slope =
        joint.face_slope + nose.force_n * own.rad_per_n + body.force_n * cross.rad_per_n;
    SurfacePoint point = kick.at_slope(0, slope);
    const double x = std::clamp(joint.pivot_mm + point.x_mm, joint.pad.start_mm, joint.pad.end_mm);
    if (x != joint.pivot_mm + point.x_mm) {
        const auto top = kick.top_at(x - joint.pivot_mm);
        if (!top) return std::nullopt;
        point = *top;
    }
    return Touch{x, point.y_mm, point.slope, nose.force_n};
}

/// Body and kick bearing together.
std::array<Touch, 2> bear_both(const Joint& joint,
                               const TurnedOutline& body,
                               const TurnedOutline& kick,
                               Touch nose,
                               Touch heel) {
    // The nose is small, so its place hardly moves with the slope: each round gains two digits.
    for (int round = 0; round < 100; ++round) {
        const MaybeTouch beside = bear_beside(joint, body, nose);
        if (!beside) break;
        heel = *beside;
        nose.force_n = HeldSpring(joint, nose).force_n(heel);
        const MaybeTouch moved = settle_kick(joint, kick, nose, heel);
        if (!moved || std::abs(moved->x_mm - nose.x_mm) < kKickSettled * joint.pivot_mm) break;
        nose = *moved;
    }
    return nose.x_mm < heel.x_mm ? std::array{nose, heel} : std::array{heel, nose};
}

/// Whether the top of the kick reaches the free face anywhere.
bool kick_in_reach(const Joint& joint, const TurnedOutline& kick) {
    const SurfacePoint top = kick.at_slope(0, 0.0);
    const double x = joint.pivot_mm + top.x_mm, r = kick.radius_mm(0);
    if (x + r <= joint.pad.start_mm || x - r >= joint.pad.end_mm) return false;
    return top.y_mm > face_mm(joint, x) - std::abs(joint.face_slope) * r;
}

Contact summed(const Joint& joint, double blade_angle_deg, std::span<const Touch> touches) {
    Contact contact;
    contact.blade_angle_deg = blade_angle_deg;
    for (const Touch& touch : touches) {
        contact.touches[static_cast<std::size_t>(contact.count++)] = touch;
        contact.force_n += touch.force_n;
        contact.energy_nmm += 0.5 * touch.force_n * overlap_mm(joint, touch);
        contact.torque_nmm +=
            touch.force_n * (touch.x_mm - joint.pivot_mm + touch.slope * touch.height_mm);
    }
    return contact;
}

Contact summed(const Joint& joint, double blade_angle_deg, const MaybeTouch& touch) {
    if (!touch) return summed(joint, blade_angle_deg, std::span<const Touch>{});
    return summed(joint, blade_angle_deg, std::span<const Touch>{&*touch, 1});
}

Contact with_kick(const Joint& joint,
                  double blade_angle_deg,
                  const TurnedOutline& body,
                  const TurnedOutline& kick,
                  const MaybeTouch& heel) {
    const MaybeTouch nose = bear_alone(joint, kick);
    const Contact on_heel = summed(joint, blade_angle_deg, heel);
    if (!nose) return on_heel;
    const Contact on_nose = summed(joint, blade_angle_deg, nose);
    // A rigid spring rests on what turns it farther, and nothing else can reach it.
    if (joint.flexibility.rigid()) {
        return on_heel.energy_nmm >= on_nose.energy_nmm ? on_heel : on_nose;
    }
    // The stronger of the two surely bears; what counts is whether the other then bears as well.
    if (heel && on_heel.energy_nmm >= on_nose.energy_nmm) {
        const MaybeTouch second = bear_beside(joint, kick, *heel);
        if (!second) return on_heel;
        return summed(joint, blade_angle_deg, bear_both(joint, body, kick, *second, *heel));
    }
    const MaybeTouch second = bear_beside(joint, body, *nose);
    if (!second) return on_nose;
    return summed(joint, blade_angle_deg, bear_both(joint, body, kick, *nose, *second));
}

}  // namespace

Contact contact_at(const Joint& joint, double blade_angle_deg) {
    if (!(blade_angle_deg >= -45.0 && blade_angle_deg <= 225.0)) {
        throw OutOfRange("blade_angle_deg: must be from -45 deg to 225 deg, got " +
                         with_unit(blade_angle_deg, "deg"));
    }
    const double turn = radians(blade_angle_deg) - std::numbers::pi;
    const TurnedOutline body(joint.outline.body, turn);
    const MaybeTouch heel = bear_alone(joint, body);
    if (joint.outline.kick) {
        const TurnedOutline kick({&*joint.outline.kick, 1}, turn);
        if (kick_in_reach(joint, kick)) return with_kick(joint, blade_angle_deg, body, kick, heel);
    }
    return summed(joint, blade_angle_deg, heel);
}

double deflection_mm(const Joint& joint, const Contact& contact, double x_mm) {
    double sum = 0.0;
    for (const Touch& touch : contact.all()) {
        sum += touch.force_n * deflection_per_force(joint.flexibility, x_mm, touch.x_mm);
    }
    return sum;
}

std::array<Load, 2> loads(const Contact& contact) {
    return {Load{contact.touches[0].x_mm, contact.touches[0].force_n},
            Load{contact.touches[1].x_mm, contact.touches[1].force_n}};
}

}  // namespace backspring

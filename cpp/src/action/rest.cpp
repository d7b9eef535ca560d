#include "backspring/action/rest.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "backspring/action/end_stop.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/core/root.hpp"
#include "blades.hpp"
#include "neighbours.hpp"
#include "place_curve.hpp"
#include "rest_search.hpp"

namespace backspring {
namespace {

// Less than this share of a torque or an energy is rounding.
constexpr double kRounding = 1e-9;

/// The rest between two angles whose torques drive the blade towards each other.
///
/// Torque may jump from closing to opening the blade. Where the energy jumps with it the tang leans
/// on the pad's end and cannot get on top: it stands on the lower side.
Contact rest_between(const Joint& joint,
                     const ContactAt& at,
                     const Contact& low,
                     const Contact& high) {
    const double beside = high.torque_nmm - low.torque_nmm;
    if (joint.alone()) {
        // A smooth torque vanishes to rounding.
        constexpr double nothing = 1e-12;
        return seat_between(at, low, high, nothing * beside);
    }
    // Beside others torque may be next to nothing over a way: its last sign tells.
    const auto torque = [&](double angle) { return at(angle).torque_nmm; };
    const double angle = find_crossing(torque, low.blade_angle_deg, high.blade_angle_deg,
                                       low.torque_nmm, high.torque_nmm);
    const Contact above = at(angle);
    if (std::abs(above.torque_nmm) <= kRounding * beside) return above;
    const Contact below = at(std::nextafter(angle, low.blade_angle_deg));
    return above.energy_nmm > below.energy_nmm * (1.0 + kRounding) ? below : above;
}

// Where nothing drives a tang any more is told this closely: no reading sees it, and nearer by
// other blades on the spring take the longer to seat.
constexpr double kLetsGoDeg = 1e-9;

/// Whether nothing drives the blade: it has let go, or what is left of its torque is the rounding
/// of a lever, as on an end that is round about the pivot.
bool stands(const Joint& joint, const Contact& contact) {
    const double lever = kRoundingOfLength * joint.pivot_mm;
    return std::abs(contact.torque_nmm) <= lever * contact.force_n;
}

/// First place, going from a contact that drives the blade to one where it stands, where it does.
Contact comes_to_stand(const Joint& joint,
                       const ContactAt& at,
                       double driven_deg,
                       double standing_deg) {
    while (std::abs(standing_deg - driven_deg) > kLetsGoDeg) {
        const double middle = 0.5 * (driven_deg + standing_deg);
        (stands(joint, at(middle)) ? standing_deg : driven_deg) = middle;
    }
    return at(standing_deg);
}

/// Slope of the spring where it is bent over a disc about the pivot instead of the tang, the other
/// blades on their faces.
std::optional<double> slope_over(const Joint& joint, const Arc& disc, const Part& part) {
    if (!joint.alone()) {
        Joint over = joint;
        over.outline = {{disc}, std::nullopt};
        const Contact contact = on_faces(Blades(over));
        return contact.count == 1 ? std::optional(contact.touches[0].slope) : std::nullopt;
    }
    const Indenter round{TurnedOutline({&disc, 1}, 0.0),
                         joint.pivot_mm,
                         joint.pad,
                         joint.face_mm,
                         joint.face_slope,
                         part};
    const auto touch = bear_alone(joint.flexibility, round);
    return touch ? std::optional(touch->slope) : std::nullopt;
}

/// A flat as the blade stands.
struct Flat {
    Part part;
    double slope;
    double face_mm;  ///< from the pivot, square to it
};

/// The flat that bears, or of a blade alone the one on the pivot's side of the arc that does.
std::optional<Flat> flat_at(const Joint& joint, const Contact& contact) {
    const Touch& touch = contact.touches[0];
    if (contact.count != 1 || touch.part.kick) return std::nullopt;
    if (!touch.part.flat && !joint.alone()) return std::nullopt;
    const bool ahead = !touch.part.flat && touch.x_mm < joint.pivot_mm;
    const int arc = ahead ? touch.part.arc - 1 : touch.part.arc;
    const Indenter body = body_of(joint, 0, contact.blade_angle_deg);
    if (arc < 0 || arc + 1 >= body.outline.count()) return std::nullopt;
    const double slope = body.outline.highest_slope(arc);
    const SurfacePoint end = body.outline.at_slope(arc, slope);
    Part part = touch.part;
    part.arc = arc, part.flat = true;
    return Flat{part, slope, (end.y_mm - slope * end.x_mm) / std::hypot(1.0, slope)};
}

/// The rest on the flat that the blade lies on at a nominal angle, or turns to, the spring bent
/// over a disc that touches that flat: the foot of the perpendicular from the pivot bears. Nothing
/// where the blade comes to rest on something else.
///
/// @param first  at the nominal angle
std::optional<Contact> rest_on_flat(const Joint& joint, const Contact& first, double reach_deg) {
    const double nominal_deg = first.blade_angle_deg;
    const auto flat = flat_at(joint, first);
    if (!flat || first.torque_nmm == 0.0) return std::nullopt;
    const Arc disc{0.0, 0.0, flat->face_mm, 0.0, std::numbers::pi};
    const auto slope = slope_over(joint, disc, flat->part);
    if (!slope) return std::nullopt;
    const double turn = degrees(std::atan(*slope) - std::atan(flat->slope));
    if (turn * first.torque_nmm >= 0.0 || std::abs(turn) > reach_deg) return std::nullopt;
    PlaceCurve way(joint);
    way.add(first);
    const auto back_nmm = [&](double away) {
        return way.contact_at(nominal_deg + std::copysign(away, turn)).torque_nmm * turn;
    };
    // On the arc it must not come to rest before.
    const bool on_arc = !first.touches[0].part.flat;
    for (double away = 1.0; on_arc && away < std::abs(turn); away += 1.0) {
        if (back_nmm(away) >= 0.0) return std::nullopt;
    }
    const double foot_mm = -*slope * flat->face_mm / std::hypot(1.0, *slope);
    const PlaceGuess guess{flat->part.arc, true, foot_mm};
    Contact rest = joint.alone() ? find_contact(joint, nominal_deg + turn, nullptr, &guess)
                                 : way.contact_at(nominal_deg + turn);
    const Part& part = rest.touches[0].part;
    const bool same = rest.count == 1 && part.flat && part.arc == flat->part.arc;
    const bool still = std::abs(rest.torque_nmm) <= kRounding * std::abs(first.torque_nmm);
    // Not in a dent too slight to stay in: the next whole degree drives the blade back.
    if (back_nmm(std::ceil(std::abs(turn))) <= 0.0) return std::nullopt;
    return same && still ? std::optional(std::move(rest)) : std::nullopt;
}

/// The rest downhill of a contact, by whole degrees.
std::optional<Contact> find_rest(const Joint& joint,
                                 const ContactAt& at,
                                 Contact last,
                                 double reach_deg) {
    const double nominal_deg = last.blade_angle_deg;
    if (stands(joint, last)) return last;
    const double downhill = last.torque_nmm > 0.0 ? -1.0 : 1.0;
    for (double away = 1.0; away <= reach_deg; away += 1.0) {
        const Contact next = at(nominal_deg + downhill * away);
        if (stands(joint, next)) {
            return comes_to_stand(joint, at, last.blade_angle_deg, next.blade_angle_deg);
        }
        if (next.torque_nmm * downhill >= 0.0) {
            return downhill > 0.0 ? rest_between(joint, at, last, next)
                                  : rest_between(joint, at, next, last);
        }
        last = next;
    }
    return std::nullopt;
}

}  // namespace

std::optional<Contact> rest_near(const Joint& joint, double nominal_deg, double reach_deg) {
    Contact first = contact_at(joint, nominal_deg);
    if (auto rest = rest_on_flat(joint, first, reach_deg)) return rest;
    PlaceCurve way(joint);
    bool kick_bore = false;
    const auto take_in = [&](const Contact& contact) {
        // Where body and kick bear, or the kick alone, they soon do so again near by.
        const bool by_kick = contact.count == 2 || contact.touches[0].part.kick;
        if (by_kick || !kick_bore) way.add(contact);
        kick_bore = kick_bore || by_kick;
    };
    take_in(first);
    const auto at = [&](double angle) {
        Contact contact = way.contact_at(angle);
        take_in(contact);
        return contact;
    };
    return find_rest(joint, at, std::move(first), reach_deg);
}

Rests find_rests(const Joint& joint, bool with_half_stop) {
    Rests rests;
    rests.closed = rest_near(joint, 0.0, kClosedReachDeg);
    if (with_half_stop) rests.half_stop = rest_near(joint, 90.0, kHalfStopReachDeg);
    rests.open = open_on_stop(joint);
    return rests;
}

}  // namespace backspring

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "bearing.hpp"
#include "neighbours.hpp"
#include "places.hpp"

namespace backspring {
namespace {

/// Whether a spring that another touch bends surely stands clear of a kick.
bool clears(const Flexibility& flexibility, const Indenter& kick, const Touch& touch) {
    // Between the three stations the bent face dips by less, if at all.
    constexpr double dip = 0.02;
    if (flexibility.rigid()) return false;
    const SurfacePoint top = kick.outline.at_slope(0, 0.0);
    const double x = kick.pivot_mm + top.x_mm, r = kick.outline.radius_mm(0);
    for (const double at : {x - r, x, x + r}) {
        const double station = std::max(at, 0.0);
        const double moved = touch.force_n * deflection_per_force(flexibility, station, touch.x_mm);
        if (top.y_mm > kick.face_at_mm(station) + moved - dip * r) return false;
    }
    return true;
}

/// Whether an outline may have a place to one side: a kick is one round nose.
bool may_lie_in(const Range& side, const Indenter& indenter) {
    if (!indenter.part.kick) return true;
    const double r = indenter.outline.radius_mm(0);
    const double x = indenter.pivot_mm + indenter.outline.at_slope(0, 0.0).x_mm;
    return x + r > side.start_mm && x - r < side.end_mm;
}

/// Where an indenter stands deepest in a bent face, above 0, or nearest to it.
struct Deepest {
    Touch touch;
    double overlap_mm;
};

/// In the face that another touch bends, to one side of that; nothing where it has no place there.
std::optional<Deepest> deepest_beside(const Flexibility& flexibility,
                                      const Touch& other,
                                      const Range& side,
                                      const Indenter& indenter) {
    constexpr double beside = 1e-9;
    if (!may_lie_in(side, indenter)) return {};
    const BeamPlace pressed = beam_place(flexibility, other.x_mm);
    const auto bent = [&](double x) {
        const Compliance by = compliance(flexibility, beam_place(flexibility, x), pressed);
        return Answer{indenter.face_at_mm(x) + other.force_n * by.mm_per_n,
                      indenter.face_slope_at(x) + other.force_n * by.rad_per_n, 0.0, 0.0};
    };
    const BearingSearch search(indenter.outline, indenter.pivot_mm, side, bent);
    auto touch = search.on(indenter.pad);
    if (!touch || std::abs(touch->x_mm - other.x_mm) < beside * indenter.pivot_mm) return {};
    const double overlap = touch->height_mm - bent(touch->x_mm).face_mm;
    touch->part = named(indenter, touch->part);
    return Deepest{*touch, overlap};
}

/// The same where it is not clear of the face.
std::optional<Touch> deepest_in(const Flexibility& flexibility,
                                const Touch& other,
                                const Range& side,
                                const Indenter& indenter) {
    const auto deepest = deepest_beside(flexibility, other, side, indenter);
    if (!deepest || !stands_in(indenter, deepest->overlap_mm)) return {};
    return deepest->touch;
}

double twice_energy_nmm(const Borne& borne) {
    return borne.touch.force_n * borne.indenter->overlap_mm(borne.touch);
}

double twice_energy_nmm(const std::vector<Borne>& all) {
    const auto add = [](double sum, const Borne& each) { return sum + twice_energy_nmm(each); };
    return std::accumulate(all.begin(), all.end(), 0.0, add);
}

/// A touch that stores most alone with what else bears beside it; nothing where that is not found.
///
/// Outward forces bend a straight face so that it lies above each of its tangents, and an outline
/// lies below its own: where both outlines run along the face and press on it, nothing else can.
/// But shear makes an edge of the face at a touch, and to either side of it a place may be right:
/// then that which stores more is.
std::vector<Borne> bear_beside(const Flexibility& flexibility,
                               const Borne& first,
                               const Indenter& second) {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    const double x = first.touch.x_mm;
    std::vector<Borne> most;
    bool clear = true;
    for (const Range side : {Range{0.5 * second.pad.start_mm, x}, Range{x, infinity}}) {
        const auto deepest = deepest_in(flexibility, first.touch, side, second);
        if (!deepest) continue;
        clear = false;
        std::vector<Borne> both{first, {&second, *deepest}};
        if (!move_together(flexibility, both)) continue;
        if (twice_energy_nmm(both) > twice_energy_nmm(most)) most = both;
    }
    if (clear) most = {first};
    return most;
}

/// A body whose kick reaches the free face, from where the body bears without it.
std::vector<Borne> bear_with_kick(const Flexibility& flexibility,
                                  const Indenter& body,
                                  const std::optional<Touch>& body_touch,
                                  const Indenter& kick) {
    const auto kick_touch = bear_alone(flexibility, kick);
    // What does not reach the free face does not reach one that is bent away from it.
    if (!body_touch && !kick_touch) return {};
    if (!body_touch) return {{&kick, *kick_touch}};
    const Borne own{&body, *body_touch};
    if (!kick_touch) return {own};
    const Borne other{&kick, *kick_touch};
    // What stores most alone presses on whatever else bears, too.
    const bool by_kick = twice_energy_nmm(other) > twice_energy_nmm(own);
    const Borne& first = by_kick ? other : own;
    // A rigid spring rests on what turns it farthest.
    if (flexibility.rigid()) return {first};
    auto borne = bear_beside(flexibility, first, by_kick ? body : kick);
    if (!borne.empty()) return borne;
    const Indenter either[] = {body, kick};
    borne = bear(flexibility, either);
    for (Borne& each : borne) each.indenter = each.indenter == &either[0] ? &body : &kick;
    return borne;
}

}  // namespace

bool detail::kick_clears(const Joint& joint, const Indenter& body, const Touch& touch) {
    const auto kick = kick_in_reach(joint, body);
    return !kick || clears(joint.flexibility, *kick, touch);
}

std::optional<double> detail::clear_by_mm(const Joint& joint,
                                          double blade_angle_deg,
                                          const Touch& bears,
                                          const Touch& other) {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    const Indenter body = body_of(joint, 0, blade_angle_deg);
    const auto kick = kick_in_reach(joint, body);
    if (!kick || joint.flexibility.rigid()) return std::nullopt;
    const PlaceGuess guess{bears.part.arc, false, bears.slope};
    const auto own = bear_alone(joint.flexibility, bears.part.kick ? *kick : body,
                                bears.part.flat ? nullptr : &guess);
    if (!own) return std::nullopt;
    const Indenter& second = other.part.kick ? *kick : body;
    const Range ahead{own->x_mm, infinity}, behind{0.5 * second.pad.start_mm, own->x_mm};
    // A kick lies where its nose does, wherever the body bears meanwhile.
    const double nose_mm = kick->pivot_mm + kick->outline.at_slope(0, 0.0).x_mm;
    const bool is_ahead = other.part.kick ? nose_mm > own->x_mm : other.x_mm > bears.x_mm;
    const Range& side = is_ahead ? ahead : behind;
    const auto deepest = deepest_beside(joint.flexibility, *own, side, second);
    return deepest ? std::optional(-deepest->overlap_mm) : std::nullopt;
}

Contact detail::contact_alone(const Joint& joint,
                              double blade_angle_deg,
                              const Pushed* pushed,
                              const PlaceGuess* guess) {
    const Indenter body = body_of(joint, 0, blade_angle_deg, pushed);
    Contact contact;
    contact.blade_angle_deg = blade_angle_deg;
    const auto touch = bear_alone(joint.flexibility, body, guess);
    const auto kick = kick_in_reach(joint, body);
    if (kick && !(touch && clears(joint.flexibility, *kick, *touch))) {
        for (const Borne& b : bear_with_kick(joint.flexibility, body, touch, *kick)) {
            add_touch(contact, *b.indenter, b.touch);
        }
    } else if (touch) {
        add_touch(contact, body, *touch);
    }
    return contact;
}

std::optional<Contact> detail::kick_bears_as(const Joint& joint,
                                             double blade_angle_deg,
                                             const Touch& touch) {
    if (joint.flexibility.rigid()) return std::nullopt;
    const Indenter body = body_of(joint, 0, blade_angle_deg);
    const auto kick = kick_in_reach(joint, body);
    if (!kick) return std::nullopt;
    const PlaceGuess guess{touch.part.arc, false, touch.slope};
    const auto found = bear_alone(joint.flexibility, *kick, &guess);
    if (!found) return std::nullopt;
    constexpr double infinity = std::numeric_limits<double>::infinity();
    for (const Range side :
         {Range{0.5 * body.pad.start_mm, found->x_mm}, Range{found->x_mm, infinity}}) {
        if (deepest_in(joint.flexibility, *found, side, body)) return std::nullopt;
    }
    Contact contact;
    contact.blade_angle_deg = blade_angle_deg;
    add_touch(contact, *kick, *found);
    return contact;
}

}  // namespace backspring

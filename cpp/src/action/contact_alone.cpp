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

/// Where an indenter stands deepest in the face that another touch bends, to one side of that;
/// nothing where it is clear of it there.
std::optional<Touch> deepest_in(const Flexibility& flexibility,
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
    if (!stands_in(indenter, touch->height_mm - bent(touch->x_mm).face_mm)) return {};
    touch->part = named(indenter, touch->part);
    return touch;
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

/// Whether body and kick that bear on each other's side bear nowhere else: the kick lies to one
/// side of the body's touch, and beyond the kick's own the body stays below the tangent of the
/// face, which the face does not.
bool only_there(const Flexibility& flexibility, const Borne& body, const Borne& kick) {
    const Pad& pad = kick.indenter->pad;
    const double x = kick.touch.x_mm, ahead = x > body.touch.x_mm ? 1.0 : -1.0;
    const TurnedOutline& nose = kick.indenter->outline;
    const double middle = kick.indenter->pivot_mm + nose.at_slope(0, 0.0).x_mm;
    if (ahead * (middle - body.touch.x_mm) <= nose.radius_mm(0)) return false;
    if (x == (ahead > 0.0 ? pad.end_mm : pad.start_mm)) return true;
    if (x == pad.start_mm || x == pad.end_mm) return false;
    const double shear = kick.touch.force_n * beam_place(flexibility, x).shear_rad_per_n;
    const double slope = kick.touch.slope - 0.5 * ahead * shear;
    const TurnedOutline& outline = body.indenter->outline;
    int arc = 0;
    while (arc + 1 < outline.count() && slope > outline.highest_slope(arc)) ++arc;
    const SurfacePoint top = outline.at_slope(arc, slope);
    const double away = body.indenter->pivot_mm + top.x_mm - x;
    if (ahead * away > 0.0) return top.y_mm < kick.touch.height_mm + slope * away;
    // It falls away from that tangent beyond the kick's touch, and stays below its own as well.
    const double own = body.touch.height_mm + body.touch.slope * (x - body.touch.x_mm);
    return own < kick.touch.height_mm;
}

/// A touch as its outline has turned under it: on an arc where that has the same slope, on a flat
/// or at an edge of the pad at the same station. Nothing where the part does not reach there.
std::optional<Touch> turned_with(const Indenter& indenter, Touch touch) {
    const TurnedOutline& outline = indenter.outline;
    const int arc = touch.part.arc;
    const double lowest = outline.lowest_slope(arc), highest = outline.highest_slope(arc);
    const bool at_edge = touch.x_mm == indenter.pad.start_mm || touch.x_mm == indenter.pad.end_mm;
    if (at_edge || touch.part.flat) {
        const auto top = outline.top_at(touch.x_mm - indenter.pivot_mm);
        if (!top || top->arc != arc || top->flat != touch.part.flat) return std::nullopt;
        touch.height_mm = top->y_mm, touch.slope = top->slope;
        return touch;
    }
    if (!(touch.slope >= lowest && touch.slope <= highest)) return std::nullopt;
    const SurfacePoint place = outline.at_slope(arc, touch.slope);
    touch.x_mm = indenter.pivot_mm + place.x_mm, touch.height_mm = place.y_mm;
    return touch;
}

}  // namespace

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

std::optional<Contact> detail::both_bear_as(const Joint& joint,
                                            double blade_angle_deg,
                                            const std::array<Touch, 2>& touches) {
    if (joint.flexibility.rigid()) return std::nullopt;
    const Indenter body = body_of(joint, 0, blade_angle_deg);
    const auto kick = kick_in_reach(joint, body);
    if (!kick) return std::nullopt;
    std::vector<Borne> both;
    for (const Touch& touch : touches) {
        const Indenter& indenter = touch.part.kick ? *kick : body;
        const auto turned = turned_with(indenter, touch);
        if (!turned) return std::nullopt;
        both.push_back({&indenter, *turned});
    }
    if (!move_together(joint.flexibility, both)) return std::nullopt;
    const bool kick_first = both[0].indenter == &*kick;
    if (!only_there(joint.flexibility, both[kick_first ? 1 : 0], both[kick_first ? 0 : 1])) {
        return std::nullopt;
    }
    Contact contact;
    contact.blade_angle_deg = blade_angle_deg;
    for (const Borne& b : both) add_touch(contact, *b.indenter, b.touch);
    return contact;
}

}  // namespace backspring

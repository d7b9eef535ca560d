#include <cmath>
#include <vector>

#include "along_outline.hpp"
#include "neighbours.hpp"
#include "places.hpp"

namespace backspring {
namespace {

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

}  // namespace

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
        const auto turned = turned_along(indenter, touch);
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

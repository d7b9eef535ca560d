#include "backspring/action/contact.hpp"

#include <algorithm>
#include <limits>
#include <numeric>

#include "backspring/action/end_stop.hpp"
#include "backspring/core/error.hpp"
#include "backspring/core/require.hpp"
#include "bearing.hpp"
#include "indenters.hpp"
#include "neighbours.hpp"
#include "places.hpp"

namespace backspring {
namespace {

/// Where an indenter stands deepest in the face that another touch bends, to one side of that;
/// nothing where it is clear of it there.
std::optional<Touch> deepest_in(const Flexibility& flexibility,
                                const Touch& other,
                                const Range& side,
                                const Indenter& indenter) {
    constexpr double rounding = 3e-14, beside = 1e-9;
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
    if (overlap <= rounding * indenter.pivot_mm) return {};
    touch->part.blade = indenter.part.blade;
    touch->part.kick = indenter.part.kick;
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

Contact contact_alone(const Joint& joint, double blade_angle_deg, const Pushed* pushed) {
    const Indenter body = body_of(joint, 0, blade_angle_deg, pushed);
    Contact contact;
    contact.blade_angle_deg = blade_angle_deg;
    const auto touch = bear_alone(joint.flexibility, body);
    const auto kick = kick_in_reach(joint, body);
    if (kick) {
        for (const Borne& b : bear_with_kick(joint.flexibility, body, touch, *kick)) {
            add_touch(contact, *b.indenter, b.touch);
        }
    } else if (touch) {
        add_touch(contact, body, *touch);
    }
    return contact;
}

/// Movement and slope of the liners' edge at a station, of all forces of a contact.
EdgeGive edge_of(const Joint& joint, const Contact& contact, double x_mm) {
    double force = 0.0, far_force = 0.0, moment = 0.0;
    for (const Load& load : loads(contact)) {
        (load.x_mm < 0.0 ? far_force : force) += load.force_n;
        moment += load.force_n * load.x_mm;
    }
    if (contact.stop.force_n != 0.0) {
        moment += Pushed{joint.flexibility, *joint.stop, contact.stop.force_n}.moment_nmm();
    }
    const auto& [give, span] = *joint.frame;
    const auto [by_force, by_moment] = edge_under(give, span, x_mm);
    // Only this end's forces press on its pivot.
    return {(force + far_force) * by_force.mm_per_n - far_force * give.pivot_mm_per_n +
                moment * by_moment.mm_per_n,
            (force + far_force) * by_force.rad_per_n + moment * by_moment.rad_per_n};
}

}  // namespace

void detail::add_touch(Contact& contact, const Indenter& indenter, const Touch& touch) {
    const int second = contact.count++;
    contact.touches[static_cast<std::size_t>(second)] = touch;
    if (second == 1 && contact.touches[1].x_mm < contact.touches[0].x_mm) {
        std::swap(contact.touches[0], contact.touches[1]);
    }
    contact.force_n += touch.force_n;
    contact.energy_nmm += 0.5 * touch.force_n * indenter.overlap_mm(touch);
    contact.torque_nmm +=
        touch.force_n * (touch.x_mm - indenter.pivot_mm + touch.slope * touch.height_mm);
}

Contact detail::find_contact(const Joint& joint, double blade_angle_deg, const Pushed* pushed) {
    if (!(blade_angle_deg >= -45.0 && blade_angle_deg <= 225.0)) {
        throw OutOfRange("blade_angle_deg: must be from -45 deg to 225 deg, got " +
                         with_unit(blade_angle_deg, "deg"));
    }
    return joint.alone() ? contact_alone(joint, blade_angle_deg, pushed)
                         : contact_with_others(joint, blade_angle_deg, pushed);
}

Contact contact_at(const Joint& joint, double blade_angle_deg) {
    return find_contact(joint, blade_angle_deg, nullptr);
}

Joint with_others_held(Joint joint, const Contact& contact) {
    std::size_t i = 0;
    const auto hold = [&](Neighbour& neighbour) {
        neighbour.standing = {contact.others.angles_deg[i++], 0.0};
    };
    std::ranges::for_each(joint.beside, hold);
    if (joint.far_end) std::ranges::for_each(joint.far_end->blades, hold);
    return joint;
}

double deflection_mm(const Joint& joint, const Contact& contact, double x_mm) {
    const Others& others = contact.others;
    double sum = others.root_lift_mm + others.root_turn_rad * x_mm;
    if (x_mm < 0.0) {
        const double own = joint.far_end ? -joint.far_end->span_mm - x_mm : 0.0;
        if (own <= 0.0) return 0.0;
        sum = others.far_root_lift_mm + others.far_root_turn_rad * own;
        for (const Touch& touch : others.far) {
            const double at = -joint.far_end->span_mm - touch.x_mm;
            sum += touch.force_n * deflection_per_force(joint.far_end->flexibility, own, at);
        }
        return sum;
    }
    const auto add = [&](const Touch& touch) {
        sum += touch.force_n * deflection_per_force(joint.flexibility, x_mm, touch.x_mm);
    };
    std::ranges::for_each(contact.all(), add);
    std::ranges::for_each(others.beside, add);
    if (contact.stop.force_n != 0.0) {
        sum += Pushed{joint.flexibility, *joint.stop, contact.stop.force_n}.at(x_mm).mm_per_n;
    }
    return sum;
}

double back_mm(const Joint& joint, const Contact& contact, double x_mm) {
    const double moved = deflection_mm(joint, contact, x_mm);
    return joint.frame ? moved - edge_of(joint, contact, x_mm).mm_per_n : moved;
}

double back_per_force(const Joint& joint, double x_mm, double xi_mm) {
    const double moved = deflection_per_force(joint.flexibility, x_mm, xi_mm);
    if (!joint.frame) return moved;
    const auto [force, moment] = edge_under(joint.frame->give, joint.frame->span_mm, x_mm);
    return moved - force.mm_per_n - xi_mm * moment.mm_per_n;
}

double back_slope(const Joint& joint, const Contact& contact, double x_mm) {
    double slope = 0.0;
    const auto add = [&](const Touch& touch) {
        slope += touch.force_n * slope_per_force(joint.flexibility, x_mm, touch.x_mm);
    };
    std::ranges::for_each(contact.all(), add);
    slope += stop_slope(joint, contact, x_mm);
    return joint.frame ? slope - edge_of(joint, contact, x_mm).rad_per_n : slope;
}

Loads loads_ahead(const Contact& contact) {
    const std::vector<Touch>& beside = contact.others.beside;
    Loads forces;
    for (const Touch& touch : contact.all()) forces.push_back({touch.x_mm, touch.force_n});
    if (beside.empty()) return forces;
    for (const Touch& touch : beside) forces.push_back({touch.x_mm, touch.force_n});
    std::ranges::sort(forces, {}, &Load::x_mm);
    return forces;
}

Loads loads(const Contact& contact) {
    Loads forces = loads_ahead(contact);
    if (contact.others.far.empty()) return forces;
    for (const Touch& touch : contact.others.far) forces.push_back({touch.x_mm, touch.force_n});
    std::ranges::sort(forces, {}, &Load::x_mm);
    return forces;
}

}  // namespace backspring

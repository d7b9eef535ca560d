#include "backspring/action/contact.hpp"

#include <algorithm>

#include "backspring/action/end_stop.hpp"
#include "backspring/core/error.hpp"
#include "backspring/core/require.hpp"
#include "indenters.hpp"
#include "neighbours.hpp"

namespace backspring {
namespace {

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

Contact detail::find_contact(const Joint& joint,
                             double blade_angle_deg,
                             const Pushed* pushed,
                             const PlaceGuess* guess) {
    if (!(blade_angle_deg >= -45.0 && blade_angle_deg <= 225.0)) {
        throw OutOfRange("blade_angle_deg: must be from -45 deg to 225 deg, got " +
                         with_unit(blade_angle_deg, "deg"));
    }
    return joint.alone() ? contact_alone(joint, blade_angle_deg, pushed, guess)
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
    if (x_mm < 0.0) {
        const double own = joint.far_end ? -joint.far_end->span_mm - x_mm : 0.0;
        if (own <= 0.0) return 0.0;
        double sum = others.far_root_lift_mm + others.far_root_turn_rad * own;
        for (const Touch& touch : others.far) {
            const double at = -joint.far_end->span_mm - touch.x_mm;
            sum += touch.force_n * deflection_per_force(joint.far_end->flexibility, own, at);
        }
        return sum;
    }
    return deflection_mm(joint, contact, beam_place(joint.flexibility, x_mm));
}

double deflection_mm(const Joint& joint, const Contact& contact, const BeamPlace& place) {
    const Others& others = contact.others;
    double sum = others.root_lift_mm + others.root_turn_rad * place.x_mm;
    const auto add = [&](const Touch& touch) {
        sum += touch.force_n * compliance(joint.flexibility, place, touch.x_mm).mm_per_n;
    };
    std::ranges::for_each(contact.all(), add);
    std::ranges::for_each(others.beside, add);
    if (contact.stop.force_n != 0.0) {
        sum += Pushed{joint.flexibility, *joint.stop, contact.stop.force_n}.at(place).mm_per_n;
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

double moment_ahead_nmm(const Contact& contact, double station_mm) {
    double moment = 0.0;
    const auto add = [&](const Touch& touch) {
        moment += touch.force_n * std::max(touch.x_mm - station_mm, 0.0);
    };
    std::ranges::for_each(contact.all(), add);
    std::ranges::for_each(contact.others.beside, add);
    return moment;
}

Loads loads(const Contact& contact) {
    Loads forces = loads_ahead(contact);
    if (contact.others.far.empty()) return forces;
    for (const Touch& touch : contact.others.far) forces.push_back({touch.x_mm, touch.force_n});
    std::ranges::sort(forces, {}, &Load::x_mm);
    return forces;
}

}  // namespace backspring

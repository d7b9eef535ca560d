#include "elements.hpp"

#include <cmath>
#include <numbers>

#include "backspring/core/angle.hpp"
#include "backspring/spring/section.hpp"
#include "backspring/spring/stretches.hpp"
#include "backspring/tang/envelope.hpp"

namespace backspring {
namespace {

// A resultant this near the pivot passes through it; a straddled one is off by half the tang.
constexpr double kNoArmMm = 1e-4;
// Far enough from the jump to be on one side of it, near enough to be called there.
constexpr double kBesideDeg = 1e-7;

/// A rigid spring along a flat bears at the flat's ends: names the arc of the nearer end.
void to_end_of_flat(const Joint& joint, State& state, std::size_t k) {
    Bearer& bearer = state.bearers[k];
    if (!bearer.normal_rad || bearer.hold != Hold::slopes_agree) return;
    const Touch& touch = state.contact.touches[k];
    const TurnedOutline body(joint.outline.body,
                             radians(state.contact.blade_angle_deg) - std::numbers::pi);
    const auto away = [&](int arc) {
        return std::abs(body.at_slope(arc, touch.slope).x_mm + joint.pivot_mm - touch.x_mm);
    };
    if (away(bearer.arc + 1) < away(bearer.arc)) ++bearer.arc;
    bearer.normal_rad.reset();
}

}  // namespace

Rates detail::rates_at(const Flexibility& flexibility, double x_mm) {
    const auto& stretches = flexibility.stretches;
    std::size_t i = stretches.size() - 1;
    while (i > 0 && x_mm < stretches[i].start_mm) --i;
    const Stretch& stretch = stretches[i];
    const UnitRates rates = unit_rates(stretch, x_mm);
    const double steel =
        thickness_mm(stretch, x_mm) - chord_mm(stretch.hole, x_mm) / stretch.cosine;
    const double narrowing = stretch.width_taper / width_share(stretch, x_mm);
    return {.bending = flexibility.bending_factor / 12.0 * rates.bending,
            .shear = flexibility.shear_factor * rates.shear,
            .shear_slope =
                -flexibility.shear_factor * rates.shear * (stretch.taper / steel + narrowing)};
}

EdgeUnder detail::dial_edge(const Joint& joint, double dial_mm) {
    return joint.frame ? edge_under(joint.frame->give, joint.frame->span_mm, dial_mm) : EdgeUnder{};
}

const Arc& detail::arc_of(const Mounted& tang, const Bearer& bearer) {
    const auto i = static_cast<std::size_t>(bearer.arc);
    return i < tang.outline.body.size() ? tang.outline.body[i] : *tang.outline.kick;
}

State detail::make_state(const Joint& joint, const Contact& contact, Seat seat) {
    State state{.contact = contact, .seat = seat, .bearers = {}};
    for (int k = 0; k < contact.count; ++k) {
        const auto i = static_cast<std::size_t>(k);
        state.bearers[i] = bearer_of(joint, contact.touches[i]);
    }
    return state;
}

State detail::make_resting_state(const Joint& joint, const Contact& contact) {
    const double arm = contact.count == 0 ? 0.0 : contact.torque_nmm / contact.force_n;
    if (std::abs(arm) < kNoArmMm) return make_state(joint, contact, Seat::free);
    const double angle = contact.blade_angle_deg;
    Contact both = contact_at(joint, angle - kBesideDeg);
    const Contact after = contact_at(joint, angle + kBesideDeg);
    both.blade_angle_deg = angle;
    both.touches[1] = after.touches[0];
    both.count = 2;
    State state = make_state(joint, both, Seat::straddled);
    for (int k = 0; k < 2; ++k) to_end_of_flat(joint, state, static_cast<std::size_t>(k));
    return state;
}

void detail::read_spring(Elements& e,
                         const Flexibility& flexibility,
                         const State& state,
                         const BendingIntegrals& at_dial) {
    using element::of_touch;
    for (int k = 0; k < state.contact.count; ++k) {
        const double x = state.contact.touches[static_cast<std::size_t>(k)].x_mm;
        const BeamPlace place = beam_place(flexibility, x);
        e[of_touch(k, element::a0)] = place.upto.a0;
        e[of_touch(k, element::a1)] = place.upto.a1;
        e[of_touch(k, element::a2)] = place.upto.a2;
        e[of_touch(k, element::shear)] = place.upto.shear;
        e[of_touch(k, element::local_shear)] = place.shear_rad_per_n;
    }
    e[element::root] = flexibility.root_rotation_rad_per_nmm;
    e[element::dial_a0] = at_dial.a0;
    e[element::dial_a1] = at_dial.a1;
    e[element::dial_a2] = at_dial.a2;
    e[element::dial_shear] = at_dial.shear;
}

void detail::read_tang(Elements& e, const Mounted& tang, const State& state, double dial_mm) {
    using element::of_touch;
    for (int k = 0; k < state.contact.count; ++k) {
        const Bearer& bearer = state.bearers[static_cast<std::size_t>(k)];
        const Arc& arc = arc_of(tang, bearer);
        e[of_touch(k, element::u)] = arc.u_mm;
        e[of_touch(k, element::w)] = arc.w_mm;
        e[of_touch(k, element::radius)] = arc.radius_mm;
        e[of_touch(k, element::edge)] =
            bearer.hold == Hold::pad_end ? tang.pad.end_mm : tang.pad.start_mm;
    }
    e[element::face] = tang.face_mm;
    e[element::face_slope] = tang.face_slope;
    e[element::pivot] = tang.pivot_mm;
    e[element::dial] = dial_mm;
}

void detail::read_friction(Elements& e, const Friction& friction) {
    e[element::friction_spring] = friction.spring;
    e[element::friction_pivot] = friction.pivot;
    e[element::pivot_pin] = friction.pivot_pin_mm;
}

Elements detail::read_elements(const Joint& joint,
                               const Friction& friction,
                               const State& state,
                               double dial_mm) {
    Elements e = Elements::Zero();
    read_spring(e, joint.flexibility, state, bending_integrals(joint.flexibility, dial_mm));
    const EdgeUnder edge = dial_edge(joint, dial_mm);
    e[element::edge_force] = edge.per_force.mm_per_n;
    e[element::edge_moment] = edge.per_moment.mm_per_n;
    read_tang(e, joint, state, joint.dial_mm);
    read_friction(e, friction);
    return e;
}

}  // namespace backspring

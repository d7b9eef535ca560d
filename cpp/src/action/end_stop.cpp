#include "backspring/action/end_stop.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "backspring/action/rest.hpp"
#include "backspring/core/angle.hpp"
#include "indenters.hpp"
#include "leaning.hpp"
#include "neighbours.hpp"
#include "place_curve.hpp"

namespace backspring {
namespace {

constexpr int kMostSteps = 40;
// Of a force or an angle: less is rounding.
constexpr double kSteady = 1e-15;
// Of a torque: what may be left of it on a stop.
constexpr double kNothingLeft = 1e-12;

/// Turn from 180 deg [rad].
double beyond_rad(double blade_angle_deg) { return radians(blade_angle_deg) - std::numbers::pi; }

/// Secant steps to where a smooth, nearly straight function vanishes.
double find_near(FunctionRef f, double first, double second) {
    double x0 = first, f0 = f(x0), x1 = second;
    for (int step = 0; step < kMostSteps; ++step) {
        const double f1 = f(x1);
        if (f1 == 0.0) return x1;
        if (!(std::abs(f1) < std::abs(f0))) return x0;
        const double next = x1 - f1 * (x1 - x0) / (f1 - f0);
        const bool steady = std::abs(next - x1) <= kSteady * std::max(std::abs(x1), 1.0);
        x0 = x1, f0 = f1, x1 = next;
        if (steady) return x1;
    }
    return x1;
}

/// What the forces of a contact and its stop do where these act.
struct EndMoves {
    double gives_way_mm = 0.0;  ///< the end, towards the pins
    double outward_mm = 0.0;    ///< the end
    double by_stop_nmm = 0.0;   ///< work of the touches along the way that the stop moves them
};

EndMoves end_moves(const Joint& joint, const Contact& contact) {
    const EndStop& stop = *joint.stop;
    const AxialPush& push = stop.push;
    const Flexibility& flexibility = joint.flexibility;
    const Others& others = contact.others;
    const double across = stop.across(), force = contact.stop.force_n;
    const double end = push_compliance(flexibility, push, push.end).mm_per_n;
    const double own = compliance(flexibility, push.end, push.end).mm_per_n;
    EndMoves moves{.gives_way_mm = others.root_turn_rad * push.root_lever_mm() +
                                   force * (push.own_mm_per_n + across * end),
                   .outward_mm = others.root_lift_mm + others.root_turn_rad * push.at_mm +
                                 force * (end + across * own)};
    const auto add = [&](const Touch& touch) {
        const BeamPlace place = beam_place(flexibility, touch.x_mm);
        const double along = place.x_mm <= push.at_mm
                                 ? push_compliance(flexibility, push, place).mm_per_n
                                 : push_compliance(flexibility, push, place.x_mm).mm_per_n;
        const double outward = compliance(flexibility, place, push.end).mm_per_n;
        moves.gives_way_mm += touch.force_n * along;
        moves.outward_mm += touch.force_n * outward;
        moves.by_stop_nmm += touch.force_n * force * (along + across * outward);
    };
    std::ranges::for_each(contact.all(), add);
    std::ranges::for_each(others.beside, add);
    // An end that goes outward stands the deeper in a face that leans over it.
    moves.gives_way_mm -= stop.lean * (moves.outward_mm - stop.bent_mm);
    return moves;
}

/// A contact found while a stop presses, with the stop's force and its part of the energy.
Contact with_stop(Contact contact, const Joint& joint, const Pushed& pushed) {
    const EndStop& stop = pushed.stop;
    const double stop_n = pushed.force_n;
    contact.stop = {.force_n = stop_n, .lever_mm = stop_lever_mm(joint, contact.blade_angle_deg)};
    const EndMoves moves = end_moves(joint, contact);
    // Half of force times way: of the stop as its end gives way, of the tang as the stop moves it.
    double work =
        stop_n * (moves.gives_way_mm - stop.lean * stop.bent_mm + stop.friction * moves.outward_mm);
    work += moves.by_stop_nmm;
    // The root's turn has its share of the end's way in the moment's work already.
    work -= contact.others.root_turn_rad * pushed.moment_nmm();
    contact.energy_nmm += 0.5 * work;
    return contact;
}

/// A blade alone that leans with one touch of its body; nothing where that does not tell it.
std::optional<Contact> leaning_alone(const Joint& joint, const Contact& plain, double lever_mm) {
    if (!joint.alone() || plain.count != 1 || plain.touches[0].part.kick) return std::nullopt;
    const Indenter body = body_of(joint, 0, plain.blade_angle_deg);
    const auto found = leaning_touch(joint, body, plain.touches[0], lever_mm);
    if (!found || found->stop_n == 0.0) return std::nullopt;
    const Pushed pushed{joint.flexibility, *joint.stop, found->stop_n};
    const Indenter pressed = body_of(joint, 0, plain.blade_angle_deg, &pushed);
    Contact contact;
    contact.blade_angle_deg = plain.blade_angle_deg;
    if (kick_in_reach(joint, pressed)) {
        contact = find_contact(joint, plain.blade_angle_deg, &pushed);
    } else {
        add_touch(contact, pressed, found->touch);
    }
    contact = with_stop(std::move(contact), joint, pushed);
    const double left = contact.torque_nmm + contact.stop.force_n * lever_mm;
    if (std::abs(left) > kNothingLeft * std::abs(plain.torque_nmm)) return std::nullopt;
    return contact;
}

}  // namespace

Contact contact_on_stop(const Joint& joint, double blade_angle_deg, double stop_n) {
    if (stop_n == 0.0) return contact_at(joint, blade_angle_deg);
    const Pushed pushed{joint.flexibility, *joint.stop, stop_n};
    return with_stop(find_contact(joint, blade_angle_deg, &pushed), joint, pushed);
}

double stop_lever_mm(const Joint& joint, double blade_angle_deg) {
    const EndStop& stop = *joint.stop;
    const double across = stop.friction * (stop.push.at_mm - joint.pivot_mm);
    if (!stop.face_mm) return stop.height_mm + across;
    const double turn = beyond_rad(blade_angle_deg), c = std::cos(turn);
    return (stop.height_mm - *stop.face_mm * std::sin(turn)) / (c * c) + across;
}

double stop_overlap_mm(const Joint& joint, double blade_angle_deg) {
    const EndStop& stop = *joint.stop;
    const double turn = beyond_rad(blade_angle_deg);
    const double face =
        (stop.face_mm.value_or(stop.end_mm) - stop.height_mm * std::sin(turn)) / std::cos(turn);
    return stop.end_mm - face;
}

double end_gives_way_mm(const Joint& joint, const Contact& contact) {
    return end_moves(joint, contact).gives_way_mm;
}

double stop_slope(const Joint& joint, const Contact& contact, double x_mm) {
    if (contact.stop.force_n == 0.0) return 0.0;
    return Pushed{joint.flexibility, *joint.stop, contact.stop.force_n}.at(x_mm).rad_per_n;
}

Contact leaning_at(const Joint& joint, double blade_angle_deg) {
    return leaning_from(joint, contact_at(joint, blade_angle_deg));
}

Contact leaning_near(const Joint& joint, double blade_angle_deg, const Contact& plain) {
    PlaceCurve way(joint);
    way.add(plain);
    return leaning_from(joint, way.contact_at(blade_angle_deg));
}

Contact leaning_from(const Joint& joint, const Contact& plain) {
    const double blade_angle_deg = plain.blade_angle_deg;
    if (plain.count == 0 || plain.torque_nmm >= 0.0) return plain;
    const double lever = stop_lever_mm(joint, blade_angle_deg);
    if (auto leaning = leaning_alone(joint, plain, lever)) return *std::move(leaning);
    const auto left = [&](double force) {
        return contact_on_stop(joint, blade_angle_deg, force).torque_nmm + force * lever;
    };
    const double about = -plain.torque_nmm / lever;
    const double force = find_near(left, about, about - left(about) / lever);
    return contact_on_stop(joint, blade_angle_deg, force);
}

Contact without_stop(const Joint& joint, const Contact& open) {
    return open.stop.force_n == 0.0 ? open : contact_at(joint, open.blade_angle_deg);
}

Contact open_on_stop(const Joint& joint) {
    if (!joint.stop) return contact_at(joint, joint.open_deg);
    if (!joint.stop->face_mm) return leaning_at(joint, joint.open_deg);
    const auto left = [&](double angle) {
        return stop_overlap_mm(joint, angle) - end_gives_way_mm(joint, leaning_at(joint, angle));
    };
    const double first = left(joint.open_deg);
    const double about = joint.open_deg - degrees(first / stop_lever_mm(joint, joint.open_deg));
    const Contact open = leaning_at(joint, find_near(left, joint.open_deg, about));
    if (open.torque_nmm <= 0.0 || contact_at(joint, joint.open_deg).torque_nmm >= 0.0) return open;
    // It lies down on its flat before it comes to the stop.
    return rest_near(joint, joint.open_deg, kClosedReachDeg).value_or(open);
}

double unloaded_open_deg(const Spring& spring, const Joint& unloaded, const Stop& stop) {
    const double height = bearing_height_mm(stop, end_thickness_mm(spring, unloaded.pad));
    const double above_pin = height - mid_line_mm(spring, unloaded.pad, 0.0);
    const double fitted = unloaded.pad.end_mm - unloaded.pivot_mm;
    const auto left = [&](double angle) {
        const double lean =
            unloaded.face_slope + deflection_mm(unloaded, contact_at(unloaded, angle), 1.0);
        const double turn = beyond_rad(angle), y = unloaded.face_mm + height;
        return fitted - lean * above_pin - (*stop.face_mm - y * std::sin(turn)) / std::cos(turn);
    };
    constexpr double open = 180.0;
    const double about = degrees(left(open) / (unloaded.face_mm + height));
    return find_near(left, open, open - about);
}

OpenPinForces open_pin_forces(const Spring& spring, const Joint& joint, const Contact& open) {
    const Loads forces = loads(open);
    OpenPinForces found{.across = pin_forces(spring, forces)};
    if (open.stop.force_n == 0.0) return found;
    const Pushed pushed{joint.flexibility, *joint.stop, open.stop.force_n};
    const double couple = pushed.moment_nmm() / spring.support.rear_pin_mm;
    found.across.rear_n += couple;
    found.across.middle_n += couple + joint.stop->across() * open.stop.force_n;
    found.along_n = open.stop.force_n;
    return found;
}

}  // namespace backspring

#include "drawn/relations.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "backspring/action/contact.hpp"
#include "backspring/action/reading.hpp"
#include "backspring/action/stroke.hpp"
#include "backspring/core/angle.hpp"
#include "drawn/alike.hpp"
#include "drawn/bounds.hpp"
#include "drawn/changed.hpp"

namespace drawn {
namespace {

int disagreements(const Draw& draw, const Parts& other, const Factors& factors) {
    return disagreements(draw.answers, answers(other, draw.angles_deg), factors);
}

int width(const Draw& draw) {
    return disagreements(draw, wider(draw.parts, 1.25), {.force = 1.25, .length = 1.0});
}

int youngs_modulus(const Draw& draw) {
    return disagreements(draw, stiffer(draw.parts, 1.25), {.force = 1.25, .length = 1.0});
}

int sizes(const Draw& draw, double k) {
    return disagreements(draw, larger(draw.parts, k), {.force = k * k, .length = k});
}

int sizes_twice(const Draw& draw) { return sizes(draw, 2.0); }

int sizes_in_inches(const Draw& draw) { return sizes(draw, 1.0 / 25.4); }

int stations(const Draw& draw) { return disagreements(draw, with_more_stations(draw.parts), {}); }

int quarter_turn(const Draw& draw) {
    const Joint joint = with_square_tang(draw.parts).joint();
    return static_cast<int>(
        std::count_if(draw.angles_deg.begin(), draw.angles_deg.end(), [&](double angle) {
            // A square tang on the wrong side of a face looks at an end that the others have not.
            if (angle < 5.0 || angle > 85.0) return false;
            return !alike(contact_at(joint, angle), contact_at(joint, angle + 90.0), {});
        }));
}

template <class Holds>
int count_where_not(const Draw& draw, Holds holds) {
    const Joint joint = draw.parts.joint();
    const auto fails = [&](double angle) { return !holds(joint, angle); };
    return static_cast<int>(std::count_if(draw.angles_deg.begin(), draw.angles_deg.end(), fails));
}

int torque(const Draw& draw) {
    const double scale = torque_scale(draw.parts.joint());
    return count_where_not(draw, [&](const Joint& joint, double angle) {
        const auto holds = [&](double at) { return torque_error(joint, at, scale) < 1e-6; };
        // A touch that comes or goes within the smallest step spoils the difference: then it is
        // taken clear of it on both sides.
        return holds(angle) || (holds(angle - 0.03) && holds(angle + 0.03));
    });
}

int touching(const Draw& draw) {
    return count_where_not(draw, [](const Joint& joint, double angle) {
        return touches_fit(joint, contact_at(joint, angle));
    });
}

int least_energy(const Draw& draw) {
    return count_where_not(draw, [](const Joint& joint, double angle) {
        const double energy = contact_at(joint, angle).energy_nmm;
        return energy >= energy_of_some_forces(joint, angle) * (1.0 - 1e-9) - 1e-12;
    });
}

int rests_stay(const Draw& draw) {
    const Joint joint = draw.parts.joint();
    const Rests rests = find_rests(joint, draw.parts.tang.half_stop_mm.has_value());
    const double scale = torque_scale(joint);
    return !stays(joint, rests.closed, scale) + !stays(joint, rests.half_stop, scale);
}

int start_pulls(const Draw& draw) {
    const auto& stroke = draw.answers.opening;
    return stroke && !(stroke->start_torque_nmm >= -1e-9 * stroke->peak_torque_nmm);
}

int reading_in_reach(const Draw& draw) {
    const Joint joint = draw.parts.rear_pin_out();
    const Readings& readings = draw.answers.rear_pin_out;
    // The spring can be turned no farther than the tang reaches at the pad's rear edge.
    const double most = 2.0 * swept_radius_mm(joint.outline) * joint.dial_mm / joint.pad.start_mm;
    const auto far = [&](const std::optional<double>& mm) { return mm && !(std::abs(*mm) < most); };
    return far(readings.closed_mm) + far(readings.half_stop_mm);
}

constexpr std::array kRelations{
    Relation{"width times 1.25: all forces times 1.25, all places the same", width},
    Relation{"Young's modulus times 1.25: all forces times 1.25, all places the same",
             youngs_modulus},
    Relation{"all sizes times two: all forces times four", sizes_twice},
    Relation{"all sizes as numbers in inches: the same joint", sizes_in_inches},
    Relation{"stations added on a straight: the same joint", stations},
    Relation{"a square tang a quarter turn on: the same contact", quarter_turn},
    Relation{"torque is dU/dtheta to 1e-6", torque},
    Relation{"touches touch, push, and run along the spring", touching},
    Relation{"no other forces on the tang would store more", least_energy},
    Relation{"a blade stays where it rests", rests_stay},
    Relation{"no blade starts by itself", start_pulls},
    Relation{"with the rear pin out no reading is beyond the tang's reach", reading_in_reach},
};

}  // namespace

Draw draw_with_angles(Chance& chance, int angles) {
    Draw draw{.parts = drawn::draw(chance), .angles_deg = {}, .answers = {}};
    const auto closed = find_rests(draw.parts.joint(), false).closed;
    const double rest = closed ? closed->blade_angle_deg : 0.0;
    for (int i = 0; i < angles; ++i) {
        draw.angles_deg.push_back(i % 2 == 0 ? rest + chance.between(-1.0, 1.0)
                                             : chance.between(-15.0, 185.0));
    }
    draw.answers = answers(draw.parts, draw.angles_deg);
    return draw;
}

std::span<const Relation> relations() { return kRelations; }

int two_touches(const Draw& draw) {
    const auto& all = draw.answers.contacts;
    return static_cast<int>(
        std::count_if(all.begin(), all.end(), [](const Contact& c) { return c.count == 2; }));
}

}  // namespace drawn

#include "drawn/blade_relations.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "backspring/action/rest.hpp"
#include "backspring/core/angle.hpp"
#include "drawn/alike.hpp"
#include "drawn/blade_bounds.hpp"
#include "drawn/blade_changes.hpp"
#include "drawn/changed.hpp"
#include "drawn/held.hpp"

namespace drawn {
namespace {

/// Least over some steps of torque less central difference (fourth order) of the energy.
template <class Energy>
double torque_miss(double torque, double enough, Energy energy) {
    double least = 1e300;
    for (double h = 1e-2; h > 1e-5 && least > enough; h *= 0.5) {
        const auto rise = [&](double by) { return energy(by) - energy(-by); };
        const double rate = (8.0 * rise(h) - rise(2.0 * h)) / (12.0 * radians(h));
        least = std::min(least, std::abs(rate - torque));
    }
    return least;
}

int torque(const BladesDraw& draw) {
    int misses = 0;
    for (std::size_t i = 0; i < draw.angles_deg.size(); ++i) {
        const double scale = kLeverMm * (total_force_n(draw.held[i]) + 1e-3);
        for (std::size_t k = 0; k < draw.design.blades.size(); ++k) {
            const auto holds = [&](double shift) {
                std::vector<double> angles = draw.angles_deg[i];
                angles[k] += shift;
                Joint joint = held_joint(draw.design, angles);
                const auto at = [&](double by) {
                    std::vector<double> turned = angles;
                    turned[k] += by;
                    joint = held_joint(draw.design, turned);
                    return contact_at(joint, turned[0]).energy_nmm;
                };
                const double torque = held(draw.design, angles)[k].torque_nmm;
                return torque_miss(torque, 1e-6 * scale, at) < 1e-6 * scale;
            };
            // A touch that comes or goes spoils the difference: then clear of it on both sides.
            misses += !(holds(0.0) || (holds(-0.03) && holds(0.03)));
        }
    }
    return misses;
}

/// Energy along the travel of the own blade less what the others give as they turn along: nothing
/// but where one stands where its torque jumps.
int torque_seated(const BladesDraw& draw) {
    int misses = 0;
    for (std::size_t i = 0; i < draw.turned_deg.size(); ++i) {
        const double scale = kLeverMm * (total_force_n(draw.seated[i]) + 1e-3);
        const auto holds = [&](double shift) {
            const double angle = draw.turned_deg[i] + shift;
            const std::vector<Contact> here = seated(draw.design, angle);
            if (!here[0].others.all_rest) return true;
            const auto at = [&](double by) {
                const std::vector<Contact> there = seated(draw.design, angle + by);
                double energy = there[0].energy_nmm;
                for (std::size_t k = 1; k < there.size(); ++k) {
                    const double turned = there[k].blade_angle_deg - here[k].blade_angle_deg;
                    energy -= here[k].torque_nmm * radians(turned);
                }
                return energy;
            };
            return torque_miss(here[0].torque_nmm, 1e-5 * scale, at) < 1e-5 * scale;
        };
        misses += !(holds(0.0) || (holds(-0.03) && holds(0.03)));
    }
    return misses;
}

/// Counts the rows at which something does not hold of a blade and its joint, seen from each.
template <class Holds>
int count_from_each(const BladesDraw& draw, Holds holds) {
    int misses = 0;
    for (std::size_t k = 0; k < draw.design.blades.size(); ++k) {
        const Design seen = seen_from(draw.design, k);
        for (const auto& row : draw.angles_deg) {
            const std::vector<double> angles = angles_from(row, k);
            misses += !holds(held_joint(seen, angles), angles[0]);
        }
    }
    return misses;
}

int touching(const BladesDraw& draw) {
    return count_from_each(draw, [](const Joint& joint, double angle) {
        return own_touches_fit(joint, contact_at(joint, angle));
    });
}

int nothing_overlaps(const BladesDraw& draw) {
    return count_from_each(draw, [](const Joint& joint, double angle) {
        const Joint stiff = without_shear(joint);
        const Contact contact = contact_at(stiff, angle);
        // With one pin and nothing at an end the spring swings out of the way.
        if (joint.far_end && joint.far_end->turns && contact.energy_nmm == 0.0) return true;
        return most_overlap_mm(stiff, contact) < 1e-9;
    });
}

void add_places(std::vector<std::vector<Above>>& grids, const Mounted& tang, double angle) {
    Joint alone;
    static_cast<Mounted&>(alone) = tang;
    const double turn = radians(angle) - std::numbers::pi;
    grids.push_back(above_pad(alone, TurnedOutline(tang.outline.body, turn)));
    if (tang.outline.kick)
        grids.push_back(above_pad(alone, TurnedOutline({&*tang.outline.kick, 1}, turn)));
}

int least_energy(const BladesDraw& draw) {
    int misses = 0;
    for (std::size_t r = 0; r < draw.angles_deg.size(); ++r) {
        const Joint joint = held_joint(draw.design, draw.angles_deg[r]);
        std::vector<std::vector<Above>> grids;
        add_places(grids, joint, draw.angles_deg[r][0]);
        for (const Neighbour& n : joint.beside)
            add_places(grids, n.tang, n.standing.blade_angle_deg);
        const std::size_t here = grids.size();
        if (joint.far_end) {
            for (const Neighbour& n : joint.far_end->blades)
                add_places(grids, n.tang, n.standing.blade_angle_deg);
        }
        const double energy = draw.held[r][0].energy_nmm;
        Chance chance(r);
        for (int tries = 0; tries < 20; ++tries) {
            std::vector<Place> places;
            for (std::size_t g = 0; g < grids.size(); ++g) {
                if (grids[g].empty()) continue;
                const auto at =
                    static_cast<std::size_t>(chance.share() * static_cast<double>(grids[g].size()));
                places.push_back({g >= here, grids[g][at].x_mm, grids[g][at].overlap_mm});
            }
            if (energy_of_places(joint, places) > energy * (1.0 + 1e-9) + 1e-12) {
                ++misses;
                break;
            }
        }
    }
    return misses;
}

int let_go(const BladesDraw& draw) {
    constexpr double away_mm = 20.0;
    int misses = 0;
    for (const auto& row : draw.angles_deg) {
        Joint joint = held_joint(draw.design, row);
        if (joint.far_end && joint.far_end->turns) continue;
        Joint alone = joint;
        alone.beside.clear();
        alone.far_end.reset();
        for (Neighbour& n : joint.beside) n.tang.face_mm += away_mm;
        if (joint.far_end) {
            for (Neighbour& n : joint.far_end->blades) n.tang.face_mm += away_mm;
        }
        misses += !drawn::alike(contact_at(alone, row[0]), contact_at(joint, row[0]), {});
    }
    return misses;
}

int others_rest(const BladesDraw& draw) {
    const Joint joint = make_joint(draw.design);
    int misses = 0;
    for (std::size_t i = 0; i < draw.turned_deg.size(); ++i) {
        if (!contact_at(joint, draw.turned_deg[i]).others.all_rest) continue;
        const double scale = kLeverMm * (total_force_n(draw.seated[i]) + 1e-6);
        std::vector<double> angles;
        for (const Contact& blade : draw.seated[i]) angles.push_back(blade.blade_angle_deg);
        for (std::size_t k = 1; k < angles.size(); ++k) {
            if (std::abs(draw.seated[i][k].torque_nmm) <= 1e-8 * scale) continue;
            // It may stand where the torque jumps from closing to opening.
            const auto beside = [&](double by) {
                std::vector<double> turned = angles;
                turned[k] += by;
                return held(draw.design, turned)[k].torque_nmm;
            };
            misses += !(beside(-1e-7) <= 1e-8 * scale && beside(1e-7) >= -1e-8 * scale);
        }
    }
    return misses;
}

constexpr std::array kRelations{
    BladesRelation{"width times 1.25: all forces times 1.25, all places the same", width},
    BladesRelation{"Young's modulus times 1.25: all forces times 1.25", youngs_modulus},
    BladesRelation{"all sizes times two: all forces times four", sizes_twice},
    BladesRelation{"stations added on a straight: the same joint", stations},
    BladesRelation{"blades listed in another order: the same joint", another_order},
    BladesRelation{"seen from every other blade: the same joint", seen_from_others},
    BladesRelation{"torque of each blade is dU/dtheta to 1e-6", torque},
    BladesRelation{"the others seated, torque is dU/dtheta less their share", torque_seated},
    BladesRelation{"touches touch, push, and run along the spring", touching},
    BladesRelation{"no outline stands out of the bent face", nothing_overlaps},
    BladesRelation{"no other forces would store more", least_energy},
    BladesRelation{"others let go: the one-blade answer", let_go},
    BladesRelation{"blades free to seat rest", others_rest},
};

}  // namespace

int count_rests(const BladesDraw& draw) {
    const Joint joint = make_joint(draw.design);
    return static_cast<int>(std::ranges::count_if(
        draw.turned_deg, [&](double angle) { return contact_at(joint, angle).others.all_rest; }));
}

std::span<const BladesRelation> blade_relations() { return kRelations; }

}  // namespace drawn

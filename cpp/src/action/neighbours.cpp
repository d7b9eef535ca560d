#include "neighbours.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "backspring/core/angle.hpp"
#include "coupled_ends.hpp"
#include "rest_search.hpp"

namespace backspring {
namespace {

constexpr int kMostSeatings = 40;
constexpr double kSettledDeg = 1e-11;
// A torque below this share of force times distance is none.
constexpr double kTorqueFree = 1e-10;

/// A disc about the pivot: what a blade at rest on a flat face amounts to, at whatever angle.
Mounted disc(const Neighbour& neighbour) {
    const Mounted& tang = neighbour.tang;
    constexpr double below = 1.0;  // far enough round that only its upper side counts
    Mounted round = tang;
    round.outline = {{{0.0, 0.0, neighbour.seat_mm, std::numbers::pi - below,
                       2.0 * std::numbers::pi + below}},
                     std::nullopt};
    return round;
}

/// All blades of a spring, the joint's own first.
class Blades {
  public:
    explicit Blades(const Joint& joint) : joint_(joint) {
        for (const Neighbour& neighbour : joint.beside) neighbours_.push_back(&neighbour);
        if (!joint.far_end) return;
        for (const Neighbour& neighbour : joint.far_end->blades) neighbours_.push_back(&neighbour);
    }

    /// Every blade as it bears at an angle of its own.
    [[nodiscard]] std::vector<Contact> at(const std::vector<double>& angles_deg) const {
        std::vector<const Mounted*> tangs;
        for (const Neighbour* neighbour : neighbours_) tangs.push_back(&neighbour->tang);
        return solve(angles_deg, tangs);
    }

    /// The own blade at an angle, the others where they stand or seat.
    [[nodiscard]] std::vector<Contact> seated(double blade_angle_deg) const {
        std::vector<double> angles{blade_angle_deg};
        for (const Neighbour* neighbour : neighbours_) {
            angles.push_back(neighbour->standing.blade_angle_deg);
        }
        if (std::ranges::none_of(neighbours_, [](const Neighbour* n) { return seats(*n); })) {
            return at(angles);
        }
        if (const auto found = seated_on_faces(angles)) return *found;
        return seated_anyhow(angles);
    }

  private:
    static bool seats(const Neighbour& neighbour) { return neighbour.standing.reach_deg > 0.0; }

    [[nodiscard]] const Neighbour& neighbour(std::size_t blade) const {
        return *neighbours_[blade - 1];
    }

    [[nodiscard]] std::vector<Contact> solve(const std::vector<double>& angles_deg,
                                             const std::vector<const Mounted*>& tangs) const {
        SpringEnd own(joint_.flexibility);
        std::optional<SpringEnd> far;
        own.add(joint_, 0, angles_deg[0]);
        if (joint_.far_end) far.emplace(joint_.far_end->flexibility);
        for (std::size_t i = 0; i < tangs.size(); ++i) {
            SpringEnd& end = i < joint_.beside.size() ? own : *far;
            end.add(*tangs[i], static_cast<int>(i) + 1, angles_deg[i + 1]);
        }
        settle(own, far ? &*far : nullptr, joint_.far_end ? &*joint_.far_end : nullptr);
        return summed(angles_deg, own, far);
    }

    [[nodiscard]] static std::vector<Contact> summed(const std::vector<double>& angles_deg,
                                                     const SpringEnd& own,
                                                     const std::optional<SpringEnd>& far) {
        std::vector<Contact> blades(angles_deg.size());
        const auto add = [&](const SpringEnd& end) {
            for (const Borne& b : end.borne()) {
                add_touch(blades[static_cast<std::size_t>(b.touch.part.blade)], *b.indenter, b.touch);
            }
        };
        add(own);
        if (far) add(*far);
        // What each end stores by itself, and the work of the moments on the roots' added turns.
        double energy = 0.5 * own.moment_nmm() * own.turn_rad();
        if (far) energy += 0.5 * far->moment_nmm() * far->turn_rad();
        for (const Contact& blade : blades) energy += blade.energy_nmm;
        for (std::size_t i = 0; i < blades.size(); ++i) {
            blades[i].blade_angle_deg = angles_deg[i];
            blades[i].energy_nmm = energy;
        }
        blades[0].others.root_turn_rad = own.turn_rad();
        if (far) blades[0].others.far_root_turn_rad = far->turn_rad();
        return blades;
    }

    /// Every blade that seats as a disc about its pivot, then turned until its face lies along the
    /// spring; nothing unless all of them are at rest there.
    [[nodiscard]] std::optional<std::vector<Contact>> seated_on_faces(
        std::vector<double> angles_deg) const {
        std::vector<Mounted> discs;
        discs.reserve(neighbours_.size());
        std::vector<const Mounted*> tangs;
        std::vector<double> as_discs = angles_deg;
        for (std::size_t i = 1; i < angles_deg.size(); ++i) {
            if (!seats(neighbour(i))) {
                tangs.push_back(&neighbour(i).tang);
                continue;
            }
            discs.push_back(disc(neighbour(i)));
            tangs.push_back(&discs.back());
            as_discs[i] = 0.0;
        }
        const std::vector<Contact> rough = solve(as_discs, tangs);
        for (std::size_t i = 1; i < angles_deg.size(); ++i) {
            if (!seats(neighbour(i)) || rough[i].count == 0) continue;
            angles_deg[i] += degrees(std::atan(rough[i].touches[0].slope));
        }
        const std::vector<Contact> found = at(angles_deg);
        for (std::size_t i = 1; i < angles_deg.size(); ++i) {
            if (seats(neighbour(i)) && !at_rest(found[i], neighbour(i))) return std::nullopt;
        }
        return found;
    }

    /// Whether the spring leaves a blade where it stands; it holds it there if it lies on the flat
    /// of its face, but not for sure if on an edge.
    static bool at_rest(const Contact& contact, const Neighbour& neighbour) {
        if (contact.count == 0) return true;
        const double scale = contact.force_n * neighbour.tang.pivot_mm;
        return contact.count == 1 && contact.touches[0].part.flat &&
               std::abs(contact.torque_nmm) <= kTorqueFree * scale;
    }

    /// Each blade that seats turned to its rest, the others where they are, until none moves.
    [[nodiscard]] std::vector<Contact> seated_anyhow(std::vector<double> angles_deg) const {
        bool all_rest = true;
        for (int round = 0; round < kMostSeatings; ++round) {
            double moved = 0.0;
            all_rest = true;
            int seating = 0;
            for (std::size_t i = 1; i < angles_deg.size(); ++i) {
                if (!seats(neighbour(i))) continue;
                ++seating;
                const double before = angles_deg[i];
                const auto turned = [&](double angle) {
                    angles_deg[i] = angle;
                    return at(angles_deg)[i];
                };
                const Standing& standing = neighbour(i).standing;
                const auto rest =
                    find_rest(turned, standing.blade_angle_deg, standing.reach_deg);
                angles_deg[i] = rest ? rest->blade_angle_deg : standing.blade_angle_deg;
                all_rest = all_rest && rest.has_value();
                moved = std::max(moved, std::abs(angles_deg[i] - before));
            }
            if (seating == 1 || moved <= kSettledDeg) break;
        }
        std::vector<Contact> found = at(angles_deg);
        found[0].others.all_rest = all_rest;
        return found;
    }

    const Joint& joint_;
    std::vector<const Neighbour*> neighbours_;
};

}  // namespace

Contact detail::contact_with_others(const Joint& joint, double blade_angle_deg) {
    const std::vector<Contact> blades = Blades(joint).seated(blade_angle_deg);
    Contact own = blades[0];
    for (std::size_t i = 1; i < blades.size(); ++i) {
        const bool here = i <= joint.beside.size();
        for (Touch touch : blades[i].all()) {
            if (here) {
                own.others.beside.push_back(touch);
                continue;
            }
            touch.x_mm = -joint.far_end->span_mm - touch.x_mm;
            touch.slope = -touch.slope;
            own.others.far.push_back(touch);
        }
        own.others.angles_deg.push_back(blades[i].blade_angle_deg);
    }
    return own;
}

std::vector<Contact> blades_of(const Joint& joint, const Contact& contact) {
    if (joint.alone()) return {contact};
    std::vector<double> angles{contact.blade_angle_deg};
    angles.insert(angles.end(), contact.others.angles_deg.begin(),
                  contact.others.angles_deg.end());
    return Blades(joint).at(angles);
}

}  // namespace backspring

#include "neighbours.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "backspring/core/angle.hpp"
#include "coupled_ends.hpp"
#include "rest_search.hpp"

namespace backspring {
namespace {

// A torque below this share of force times distance is none.
constexpr double kTorqueFree = 1e-10;
constexpr int kMostSteps = 25;

/// A disc about the pivot: what a blade at rest on a flat face amounts to, at whatever angle.
Mounted disc(const Neighbour& neighbour) {
    const Mounted& tang = neighbour.tang;
    constexpr double below = 1.0;  // far enough round that only its upper side counts
    Mounted round = tang;
    round.outline = {
        {{0.0, 0.0, neighbour.seat_mm, std::numbers::pi - below, 2.0 * std::numbers::pi + below}},
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
        return solve(angles_deg, outlines());
    }

    /// The own blade at an angle, the others where they stand or seat.
    [[nodiscard]] std::vector<Contact> seated(double blade_angle_deg) const {
        std::vector<double> angles{blade_angle_deg};
        for (const Neighbour* neighbour : neighbours_) {
            angles.push_back(neighbour->standing.blade_angle_deg);
        }
        const std::vector<Contact> flat = on_faces(angles);
        std::vector<std::size_t> hard;
        for (std::size_t i = 1; i < angles.size(); ++i) {
            if (seats(i) && !at_rest(flat[i], i)) hard.push_back(i);
        }
        if (hard.empty()) return flat;
        return hard.size() == 1 ? one_seated(angles, hard.front()) : some_seated(angles, hard);
    }

  private:
    using Outlines = std::vector<const Mounted*>;

    [[nodiscard]] const Neighbour& neighbour(std::size_t blade) const {
        return *neighbours_[blade - 1];
    }
    [[nodiscard]] bool seats(std::size_t blade) const {
        return neighbour(blade).standing.reach_deg > 0.0;
    }
    [[nodiscard]] bool seats_on_face(std::size_t blade) const {
        return seats(blade) && neighbour(blade).seat_mm > 0.0;
    }

    [[nodiscard]] Outlines outlines() const {
        Outlines tangs;
        for (const Neighbour* neighbour : neighbours_) tangs.push_back(&neighbour->tang);
        return tangs;
    }

    /// @param tangs  of the neighbours in turn; none for a blade that is left out
    [[nodiscard]] std::vector<Contact> solve(const std::vector<double>& angles_deg,
                                             const Outlines& tangs) const {
        SpringEnd own(joint_.flexibility);
        std::optional<SpringEnd> far;
        own.add(joint_, 0, angles_deg[0]);
        if (joint_.far_end) far.emplace(joint_.far_end->flexibility);
        for (std::size_t i = 0; i < tangs.size(); ++i) {
            if (!tangs[i]) continue;
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
                add_touch(blades[static_cast<std::size_t>(b.touch.part.blade)], *b.indenter,
                          b.touch);
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

    /// Every blade that seats on a face as a disc about its pivot, the others as they are; its
    /// angle then is that of the bent spring there, which it follows even where it is loose.
    std::vector<Contact> turn_to_faces(std::vector<double>& angles_deg) const {
        std::vector<Mounted> discs;
        discs.reserve(neighbours_.size());
        Outlines tangs = outlines();
        std::vector<double> as_discs = angles_deg;
        for (std::size_t i = 1; i < angles_deg.size(); ++i) {
            if (!seats_on_face(i)) continue;
            discs.push_back(disc(neighbour(i)));
            tangs[i - 1] = &discs.back();
            as_discs[i] = 0.0;
        }
        std::vector<Contact> rough = solve(as_discs, tangs);
        for (std::size_t i = 1; i < angles_deg.size(); ++i) {
            if (!seats_on_face(i)) continue;
            const double slope =
                rough[i].count > 0 ? rough[i].touches[0].slope : face_slope(rough, i);
            angles_deg[i] = neighbour(i).standing.blade_angle_deg + degrees(std::atan(slope));
        }
        return rough;
    }

    /// Slope of the bent face at the pivot of a blade.
    [[nodiscard]] double face_slope(const std::vector<Contact>& blades, std::size_t blade) const {
        const std::size_t here = joint_.beside.size() + 1;
        const bool near = blade < here;
        const Flexibility& flexibility = near ? joint_.flexibility : joint_.far_end->flexibility;
        const Mounted& tang = neighbour(blade).tang;
        const Others& others = blades[0].others;
        double slope = tang.face_slope + (near ? others.root_turn_rad : others.far_root_turn_rad);
        for (std::size_t i = near ? 0 : here; i < (near ? here : blades.size()); ++i) {
            for (const Touch& touch : blades[i].all()) {
                slope += touch.force_n * slope_per_force(flexibility, tang.pivot_mm, touch.x_mm);
            }
        }
        return slope;
    }

    [[nodiscard]] std::vector<Contact> on_faces(std::vector<double> angles_deg) const {
        if (any_on_face()) turn_to_faces(angles_deg);
        return at(angles_deg);
    }

    [[nodiscard]] bool any_on_face() const {
        for (std::size_t i = 1; i <= neighbours_.size(); ++i) {
            if (seats_on_face(i)) return true;
        }
        return false;
    }

    /// Whether the spring leaves a blade where it stands; one that lies on the flat of its face is
    /// held there, but not for sure one that stands on an edge.
    [[nodiscard]] bool at_rest(const Contact& contact, std::size_t blade) const {
        if (contact.count == 0) return true;
        const double scale = contact.force_n * neighbour(blade).tang.pivot_mm;
        return seats_on_face(blade) && contact.touches[0].part.flat &&
               std::abs(contact.torque_nmm) <= kTorqueFree * scale;
    }

    /// One blade turned to its rest, the others on their faces at each of its angles.
    [[nodiscard]] std::vector<Contact> one_seated(std::vector<double> angles_deg,
                                                  std::size_t blade) const {
        const auto turned = [&](double angle) {
            angles_deg[blade] = angle;
            return on_faces_but(angles_deg, blade)[blade];
        };
        const Standing& standing = neighbour(blade).standing;
        auto rest = rest_about(turned, blade);
        if (!rest) rest = find_rest(turned, standing.blade_angle_deg, standing.reach_deg);
        angles_deg[blade] = rest ? rest->blade_angle_deg : standing.blade_angle_deg;
        std::vector<Contact> found = on_faces_but(angles_deg, blade);
        found[0].others.all_rest = rest.has_value();
        return found;
    }

    /// The rest of a blade near where it seats by itself, by secant steps; nothing if there is none
    /// that they find.
    [[nodiscard]] std::optional<Contact> rest_about(const ContactAt& turned,
                                                    std::size_t blade) const {
        constexpr double apart_deg = 1e-3, farthest_deg = 2.0;
        constexpr int most_steps = 8;
        const double start = neighbour(blade).seat_deg;
        Contact last = turned(start), now = turned(start + apart_deg);
        for (int step = 0; step < most_steps; ++step) {
            const double rise = now.torque_nmm - last.torque_nmm;
            if (now.count == 0 || !(rise * (now.blade_angle_deg - last.blade_angle_deg) > 0.0))
                break;
            if (torque_share(now, blade) <= kTorqueFree) return now;
            const double next =
                now.blade_angle_deg -
                now.torque_nmm / rise * (now.blade_angle_deg - last.blade_angle_deg);
            if (!(std::abs(next - start) < farthest_deg)) break;
            last = now;
            now = turned(next);
        }
        return std::nullopt;
    }

    /// As on_faces(), one blade held at its angle.
    [[nodiscard]] std::vector<Contact> on_faces_but(std::vector<double> angles_deg,
                                                    std::size_t blade) const {
        std::vector<double> seated = angles_deg;
        if (any_on_face()) turn_to_faces(seated);
        seated[blade] = angles_deg[blade];
        return at(seated);
    }

    /// Several blades turned to their rests: each as if it seated by itself, which is right where
    /// the proudest bears alone; those that bear together then by Newton's method on their torques.
    [[nodiscard]] std::vector<Contact> some_seated(std::vector<double> angles_deg,
                                                   const std::vector<std::size_t>& hard) const {
        bool all_rest = true;
        turn_to_faces(angles_deg);
        const std::vector<double> start = angles_deg;
        for (const std::size_t blade : hard) {
            Outlines tangs = outlines();
            for (const std::size_t other : hard) {
                if (other != blade) tangs[other - 1] = nullptr;
            }
            std::vector<double> alone = start;
            const auto turned = [&](double angle) {
                alone[blade] = angle;
                return solve(alone, tangs)[blade];
            };
            const Standing& standing = neighbour(blade).standing;
            const auto rest = find_rest(turned, standing.blade_angle_deg, standing.reach_deg);
            all_rest = all_rest && rest;
            if (rest) angles_deg[blade] = rest->blade_angle_deg;
        }
        std::vector<Contact> found = at(angles_deg);
        for (int step = 0; step < kMostSteps && !settled(found); ++step) {
            const std::vector<Contact> next = newton_step(found);
            if (worst_torque(next) >= worst_torque(found)) break;
            found = next;
        }
        found[0].others.all_rest = all_rest;
        return found;
    }

    [[nodiscard]] double torque_share(const Contact& contact, std::size_t blade) const {
        if (!seats(blade) || contact.count == 0) return 0.0;
        return std::abs(contact.torque_nmm) / (contact.force_n * neighbour(blade).tang.pivot_mm);
    }

    [[nodiscard]] double worst_torque(const std::vector<Contact>& blades) const {
        double worst = 0.0;
        for (std::size_t i = 1; i < blades.size(); ++i) {
            worst = std::max(worst, torque_share(blades[i], i));
        }
        return worst;
    }

    [[nodiscard]] bool settled(const std::vector<Contact>& blades) const {
        return worst_torque(blades) <= kTorqueFree;
    }

    /// All blades that seat and bear turned at once towards no torque, as far as it gets less.
    [[nodiscard]] std::vector<Contact> newton_step(const std::vector<Contact>& from) const {
        constexpr double probe_deg = 1e-6;
        std::vector<std::size_t> free;
        std::vector<double> angles;
        for (std::size_t i = 0; i < from.size(); ++i) {
            angles.push_back(from[i].blade_angle_deg);
            if (i > 0 && seats(i) && from[i].count > 0) free.push_back(i);
        }
        const auto n = static_cast<Eigen::Index>(free.size());
        Eigen::MatrixXd rates(n, n);
        Eigen::VectorXd torques(n);
        for (Eigen::Index j = 0; j < n; ++j) {
            const std::size_t turned = free[static_cast<std::size_t>(j)];
            std::vector<double> probed = angles;
            probed[turned] += probe_deg;
            const std::vector<Contact> there = at(probed);
            torques[j] = from[turned].torque_nmm;
            for (Eigen::Index i = 0; i < n; ++i) {
                const std::size_t k = free[static_cast<std::size_t>(i)];
                rates(i, j) = (there[k].torque_nmm - from[k].torque_nmm) / probe_deg;
            }
        }
        const Eigen::VectorXd step = rates.colPivHouseholderQr().solve(-torques);
        std::vector<Contact> best = from;
        for (double share = 1.0; share > 1e-3 && step.allFinite(); share *= 0.5) {
            std::vector<double> next = angles;
            for (Eigen::Index i = 0; i < n; ++i) {
                const std::size_t k = free[static_cast<std::size_t>(i)];
                const Standing& standing = neighbour(k).standing;
                next[k] = std::clamp(next[k] + share * step[i],
                                     standing.blade_angle_deg - standing.reach_deg,
                                     standing.blade_angle_deg + standing.reach_deg);
            }
            best = at(next);
            if (worst_torque(best) < worst_torque(from)) break;
        }
        return best;
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
    angles.insert(angles.end(), contact.others.angles_deg.begin(), contact.others.angles_deg.end());
    return Blades(joint).at(angles);
}

}  // namespace backspring

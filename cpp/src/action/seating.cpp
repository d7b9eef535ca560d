#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "blades.hpp"
#include "rest_search.hpp"

namespace backspring {
namespace {

// A torque below this share of all forces times distance is none.
constexpr double kTorqueFree = 1e-10;
// A torque above this share drives a blade far; below it, all seats together are about to be found.
constexpr double kDriven = 1e-6;
constexpr double kStaysDeg = 1e-10;
constexpr int kMostRounds = 25;

/// Turns the blades that are free to seat until the spring leaves them where they are.
///
/// Those that lie on the flat of a face are discs meanwhile; the others, on a kick or an edge, are
/// turned in turn, each to the least energy, and then together by Newton's method.
class Seating {
  public:
    Seating(Blades& blades, double blade_angle_deg)
        : blades_(blades), angles_deg_{blade_angle_deg}, faces_{false}, turned_{false} {
        for (std::size_t i = 1; i < blades.count(); ++i) {
            const Neighbour& other = blades.neighbour(i);
            const bool seats = other.standing.reach_deg > 0.0;
            faces_.push_back(seats && other.seat_mm > 0.0);
            turned_.push_back(seats && !faces_[i]);
            angles_deg_.push_back(turned_[i] ? other.seat_deg : other.standing.blade_angle_deg);
        }
    }

    [[nodiscard]] std::vector<Contact> at_rest() {
        if (std::ranges::count(faces_, true) > 0) (void)blades_.on_faces(angles_deg_, faces_);
        std::vector<Contact> now = blades_.at(angles_deg_);
        bool all_rest = true;
        for (int round = 0; round < kMostRounds; ++round) {
            turn_those_off_their_faces(now);
            if (worst_torque(now) <= kTorqueFree && jumps_stay_) break;
            const std::vector<double> before = angles_deg_;
            all_rest = turn_each();
            now = blades_.at(angles_deg_);
            if (all_rest) turn_together(now);
            jumps_stay_ = count_free() < 2 || longest_turn_of_jumps(before) <= kStaysDeg;
        }
        now[0].others.all_rest = all_rest && worst_torque(now) <= 1e3 * kTorqueFree;
        return now;
    }

  private:
    [[nodiscard]] bool seats(std::size_t blade) const { return faces_[blade] || turned_[blade]; }

    [[nodiscard]] std::size_t count_free() const {
        std::size_t free = 0;
        for (std::size_t i = 1; i < blades_.count(); ++i) free += seats(i);
        return free;
    }

    /// How far those have turned whose torque jumps: where it does hangs on how the others stand.
    [[nodiscard]] double longest_turn_of_jumps(const std::vector<double>& before) const {
        double longest = 0.0;
        for (std::size_t i = 1; i < before.size(); ++i) {
            if (stands_[i]) longest = std::max(longest, std::abs(angles_deg_[i] - before[i]));
        }
        return longest;
    }

    [[nodiscard]] double torque_share(const std::vector<Contact>& all, std::size_t blade) const {
        if (all[blade].count == 0) return 0.0;
        double force = 0.0;
        for (const Contact& each : all) force += each.force_n;
        return std::abs(all[blade].torque_nmm) / (force * blades_.neighbour(blade).tang.pivot_mm);
    }

    [[nodiscard]] double worst_torque(const std::vector<Contact>& blades) const {
        double worst = 0.0;
        for (std::size_t i = 1; i < blades.size(); ++i) {
            if (seats(i) && !stands_[i]) worst = std::max(worst, torque_share(blades, i));
        }
        return worst;
    }

    /// A blade that does not lie on the flat of its face must be turned as one on a kick is.
    void turn_those_off_their_faces(const std::vector<Contact>& blades) {
        for (std::size_t i = 1; i < blades.size(); ++i) {
            if (!faces_[i] || blades[i].count == 0) continue;
            if (blades[i].touches[0].part.flat && torque_share(blades, i) <= kTorqueFree) continue;
            faces_[i] = false;
            turned_[i] = true;
        }
    }

    /// What other blades bear on, told to one of them.
    static void add_others(std::vector<Contact>& blades, std::size_t blade) {
        for (std::size_t k = 0; k < blades.size(); ++k) {
            if (k == blade) continue;
            for (const Touch& touch : blades[k].all()) blades[blade].others.beside.push_back(touch);
        }
    }

    /// A blade's rest downhill of an angle, while all others stay.
    [[nodiscard]] std::optional<Contact> rest_of(std::size_t blade, double start_deg) {
        const auto turned = [&](double angle) {
            std::vector<double> angles = angles_deg_;
            angles[blade] = angle;
            std::vector<Contact> found = blades_.on_faces(angles, faces_);
            if (torque_share(found, blade) <= kTorqueFree) found[blade].torque_nmm = 0.0;
            add_others(found, blade);
            return found[blade];
        };
        return rest_from(turned, start_deg, blades_.neighbour(blade).standing);
    }

    /// Those beside it, free to seat and driven to turn, that bear while a blade stands at an
    /// angle.
    [[nodiscard]] std::vector<std::size_t> bearing_driven(std::size_t blade, double angle_deg) {
        std::vector<double> angles = angles_deg_;
        angles[blade] = angle_deg;
        const std::vector<Contact> found = blades_.on_faces(angles, faces_);
        std::vector<std::size_t> driven;
        for (std::size_t k = 1; k < found.size(); ++k) {
            if (k == blade || !turned_[k] || !blades_.side_by_side(k, blade)) continue;
            if (torque_share(found, k) > kDriven) driven.push_back(k);
        }
        return driven;
    }

    /// Turns a blade to its rest. Where it lets go because others bear that will give way as well
    /// once they are turned, it goes on without them: else each would wait for the other.
    [[nodiscard]] std::optional<Contact> turn(std::size_t blade) {
        std::optional<Contact> rest = rest_of(blade, angles_deg_[blade]);
        if (!rest || rest->count > 0) return rest;
        const auto others = bearing_driven(blade, rest->blade_angle_deg);
        if (others.empty()) return rest;
        for (const std::size_t other : others) blades_.take_off(other, true);
        rest = rest_of(blade, rest->blade_angle_deg);
        for (const std::size_t other : others) blades_.take_off(other, false);
        return rest;
    }

    /// @returns  whether each has a rest within its reach
    bool turn_each() {
        bool all = true;
        for (std::size_t i = 1; i < blades_.count(); ++i) {
            if (!turned_[i]) continue;
            const auto rest = turn(i);
            stands_[i] = rest && rest->torque_nmm != 0.0;
            angles_deg_[i] =
                rest ? rest->blade_angle_deg : blades_.neighbour(i).standing.blade_angle_deg;
            all = all && rest;
        }
        if (std::ranges::count(faces_, true) > 0) (void)blades_.on_faces(angles_deg_, faces_);
        return all;
    }

    /// Newton's method on the torques of all that bear, as long as the worst gets less.
    void turn_together(std::vector<Contact>& now) {
        for (int step = 0; step < kMostRounds && worst_torque(now) > kTorqueFree; ++step) {
            std::vector<double> next = newton_angles(now);
            std::vector<Contact> there = blades_.at(next);
            if (!(worst_torque(there) < 0.5 * worst_torque(now))) return;
            now = std::move(there);
            angles_deg_ = std::move(next);
        }
    }

    [[nodiscard]] std::vector<double> newton_angles(const std::vector<Contact>& from) {
        constexpr double probe_deg = 1e-6;
        std::vector<std::size_t> free;
        for (std::size_t i = 1; i < from.size(); ++i) {
            if (seats(i) && !stands_[i] && from[i].count > 0) free.push_back(i);
        }
        const auto n = static_cast<Eigen::Index>(free.size());
        const auto blade = [&](Eigen::Index i) { return free[static_cast<std::size_t>(i)]; };
        Eigen::MatrixXd rates(n, n);
        Eigen::VectorXd torques(n);
        for (Eigen::Index j = 0; j < n; ++j) {
            std::vector<double> probed = angles_deg_;
            probed[blade(j)] += probe_deg;
            const std::vector<Contact> there = blades_.at(probed);
            torques[j] = from[blade(j)].torque_nmm;
            for (Eigen::Index i = 0; i < n; ++i) {
                rates(i, j) = (there[blade(i)].torque_nmm - from[blade(i)].torque_nmm) / probe_deg;
            }
        }
        const Eigen::VectorXd by = rates.colPivHouseholderQr().solve(-torques);
        std::vector<double> angles = angles_deg_;
        for (Eigen::Index i = 0; i < n && by.allFinite(); ++i) {
            const Standing& standing = blades_.neighbour(blade(i)).standing;
            angles[blade(i)] =
                std::clamp(angles[blade(i)] + by[i], standing.blade_angle_deg - standing.reach_deg,
                           standing.blade_angle_deg + standing.reach_deg);
        }
        return angles;
    }

    Blades& blades_;
    std::vector<double> angles_deg_;
    std::vector<bool> faces_;   ///< which seat on the flat of a face
    std::vector<bool> turned_;  ///< which are turned to their rest
    std::vector<bool> stands_ = std::vector<bool>(blades_.count());  ///< where its torque jumps
    bool jumps_stay_ = true;
};

}  // namespace

std::vector<Contact> detail::seated(Blades blades, double blade_angle_deg) {
    return Seating(blades, blade_angle_deg).at_rest();
}

Contact detail::on_faces(Blades blades) {
    constexpr double open_deg = 180.0;
    std::vector<double> angles{open_deg};
    std::vector<bool> faces{false};
    bool all_seat = true;
    for (std::size_t i = 1; i < blades.count(); ++i) {
        const Neighbour& other = blades.neighbour(i);
        faces.push_back(other.standing.reach_deg > 0.0 && other.seat_mm > 0.0);
        angles.push_back(other.standing.blade_angle_deg);
        all_seat = all_seat && (faces[i] || other.standing.reach_deg == 0.0);
    }
    if (all_seat) return blades.on_faces(angles, faces)[0];
    const std::vector<Contact> found = seated(blades, open_deg);
    for (std::size_t i = 1; i < blades.count(); ++i) {
        if (!faces[i]) angles[i] = found[i].blade_angle_deg;
    }
    return blades.on_faces(angles, faces)[0];
}

}  // namespace backspring

#include "backspring/action/two_joints.hpp"

#include <algorithm>

#include "backspring/core/root.hpp"

namespace backspring {
namespace {

constexpr int kMostRounds = 60;

/// One end of the spring, solved again whenever its root is turned.
class End {
  public:
    End(const Joint& joint, const BladeStand& stand)
        : joint_(joint), free_slope_(joint.face_slope), stand_(stand) {}

    /// Moment about the root when it is turned outward.
    double moment_nmm(double turn_rad) {
        joint_.face_slope = free_slope_ + turn_rad;
        std::optional<Contact> found;
        if (stand_.reach_deg > 0.0) {
            found = rest_near(joint_, stand_.blade_angle_deg, stand_.reach_deg);
        }
        // A blade without a rest is taken where it stands, so that the search can pass it by.
        stands_ = found.has_value() || stand_.reach_deg == 0.0;
        contact_ = found ? *found : contact_at(joint_, stand_.blade_angle_deg);
        return root_moment_nmm(contact_);
    }

    [[nodiscard]] const Contact& contact() const { return contact_; }
    [[nodiscard]] bool stands() const { return stands_; }

    /// About how much moment a turn takes away [N mm/rad].
    [[nodiscard]] double stiffness() const {
        const double pivot = joint_.pivot_mm;
        return pivot * pivot / deflection_per_force(joint_.flexibility, pivot, pivot);
    }

  private:
    Joint joint_;
    double free_slope_;
    BladeStand stand_;
    Contact contact_{};
    bool stands_ = false;
};

/// The turn of a spring on its one pin at which both moments are alike.
double balanced_turn(End& first, End& second) {
    const auto lack = [&](double turn) {
        return first.moment_nmm(turn) - second.moment_nmm(-turn);
    };
    double low = 0.0, at_low = lack(low);
    if (at_low == 0.0) return 0.0;
    // A little farther than two straight springs would turn, then farther still.
    double step = 1.5 * at_low / (first.stiffness() + second.stiffness());
    for (int round = 0; round < kMostRounds; ++round, step *= 2.0) {
        const double high = low + step, at_high = lack(high);
        if (at_low * at_high <= 0.0) return find_root(lack, low, high, at_low, at_high);
        low = high;
        at_low = at_high;
    }
    return low;
}

/// The moment of the second end that agrees with what it does to the first end and gets back.
double agreed_moment_nmm(End& first, End& second, double cross_rad_per_nmm) {
    const auto lack = [&](double moment) {
        const double other = first.moment_nmm(cross_rad_per_nmm * moment);
        return second.moment_nmm(cross_rad_per_nmm * other) - moment;
    };
    double low = 0.0, at_low = lack(low);
    // The answer to no moment is the moment itself where the cross turn takes away from it.
    double high = std::max(at_low, second.moment_nmm(0.0)), at_high = lack(high);
    for (int round = 0; at_high > 0.0 && round < kMostRounds; ++round) {
        low = high;
        at_low = at_high;
        high *= 2.0;
        at_high = lack(high);
    }
    return find_root(lack, low, high, at_low, at_high);
}

}  // namespace

double root_moment_nmm(const Contact& contact) {
    double moment = 0.0;
    for (const Touch& touch : contact.all()) moment += touch.force_n * touch.x_mm;
    return moment;
}

std::optional<TwoContacts> contacts_at(const TwoJoints& joints,
                                       const BladeStand& first,
                                       const BladeStand& second) {
    End a(joints.first, first), b(joints.second, second);
    TwoContacts both;
    if (joints.turns) {
        both.first_turn_rad = balanced_turn(a, b);
        both.second_turn_rad = -both.first_turn_rad;
    } else {
        both.first_turn_rad =
            joints.cross_rad_per_nmm * agreed_moment_nmm(a, b, joints.cross_rad_per_nmm);
        both.second_turn_rad = joints.cross_rad_per_nmm * a.moment_nmm(both.first_turn_rad);
    }
    const double at_first = a.moment_nmm(both.first_turn_rad);
    const double at_second = b.moment_nmm(both.second_turn_rad);
    if (!a.stands() || !b.stands()) return std::nullopt;
    both.first = a.contact();
    both.second = b.contact();
    // What each end stores by itself, and the work of the moments on the roots' added turns.
    const double energy = both.first.energy_nmm + both.second.energy_nmm +
                          0.5 * (at_first * both.first_turn_rad + at_second * both.second_turn_rad);
    both.first.energy_nmm = both.second.energy_nmm = energy;
    return both;
}

}  // namespace backspring

#include <algorithm>
#include <cmath>
#include <utility>

#include "backspring/core/angle.hpp"
#include "rest_search.hpp"

namespace backspring {
namespace {

// No nearer is a seat told: no reading sees it, and what is left of torque or energy is rounding.
constexpr double kSeatedDeg = 1e-11;
constexpr double kRoomDeg = 1e-9;
constexpr int kMostLooks = 100;
// Less than this share of an energy is rounding.
constexpr double kEnergyRounding = 1e-9;

/// First place, going from a bearing contact to one that has let go, where nothing bears: by the
/// force, which falls nearly straight to nothing.
Contact letting_go_soon(const ContactAt& at, Contact bearing, Contact free) {
    Contact before = bearing;
    for (int round = 0; round < 60; ++round) {
        const double low = bearing.blade_angle_deg, high = free.blade_angle_deg;
        if (std::abs(high - low) < kRoomDeg) break;
        double next = 0.5 * (low + high);
        const double fall = before.force_n - bearing.force_n;
        if (fall > 0.0 && round % 4 != 3) {
            const double zero = low + bearing.force_n / fall * (low - before.blade_angle_deg);
            const double past = zero + std::copysign(0.4 * kRoomDeg, high - low);
            if ((past - low) * (high - past) > 0.0) next = past;
        }
        Contact there = at(next);
        if (there.count == 0) {
            free = std::move(there);
        } else {
            before = std::move(bearing);
            bearing = std::move(there);
        }
    }
    return free;
}

// Flats of two blades nearer to one direction than this may bear as one.
constexpr double kAlikeDeg = 4e-9;

/// Where a blade's flat would run along one of another blade on which both bear, between two
/// angles.
std::optional<double> along_another_deg(const Contact& contact, double low, double high) {
    const Touch& own = contact.touches[0];
    if (contact.count != 1 || !own.part.flat) return std::nullopt;
    for (const Touch& other : contact.others.beside) {
        if (!other.part.flat) continue;
        const double turn = std::atan(other.slope) - std::atan(own.slope);
        const double angle = contact.blade_angle_deg + degrees(turn);
        if (angle > low + kAlikeDeg && angle < high - kAlikeDeg) return angle;
    }
    return std::nullopt;
}

/// An angle and the torque there.
struct Look {
    double angle_deg, torque_nmm;
};

/// Where two contacts whose torques drive a blade towards each other meet.
class Between {
  public:
    Between(Contact low, Contact high)
        : low_(std::move(low)),
          high_(std::move(high)),
          before_(look_of(low_)),
          last_(look_of(high_)) {}

    [[nodiscard]] double gap_deg() const { return high_.blade_angle_deg - low_.blade_angle_deg; }

    [[nodiscard]] double middle_deg() const { return low_.blade_angle_deg + 0.5 * gap_deg(); }

    /// Whether it is told where they meet: nowhere nearer than where flats run along each other.
    [[nodiscard]] bool told() const {
        return gap_deg() <= kSeatedDeg || (meets_alike_ && gap_deg() <= 1.01 * kAlikeDeg);
    }

    /// By a secant; where torque jumps or bends, by the energies of both sides, each going on with
    /// the torque it has.
    [[nodiscard]] double next_deg() {
        const double low = low_.blade_angle_deg, high = high_.blade_angle_deg;
        if (const auto alike = alike_deg()) return *alike;
        if (++looks_ % 6 == 0) return middle_deg();
        double angle = jumps() || poor_ ? meeting_deg() : secant_deg();
        if (!(angle > low && angle < high)) {
            angle = low + gap_deg() * low_.torque_nmm / (low_.torque_nmm - high_.torque_nmm);
        }
        const double least = std::min(0.4 * kSeatedDeg, 0.4 * gap_deg());
        return std::clamp(angle, low + least, high - least);
    }

    void add(Contact there) {
        const bool low = there.torque_nmm < 0.0;
        Contact& side = low ? low_ : high_;
        const double way = there.blade_angle_deg - side.blade_angle_deg;
        (low ? low_rate_ : high_rate_) = (there.torque_nmm - side.torque_nmm) / way;
        constexpr double poor = 0.3;
        poor_ = std::abs(there.torque_nmm) > poor * std::abs(side.torque_nmm);
        run_ = low == low_last_ ? run_ + 1 : 1;
        low_last_ = low;
        before_ = std::exchange(last_, look_of(there));
        side = std::move(there);
    }

    /// Right where flats run along each other, if they do. Where the energy jumps as well the tang
    /// leans on the pad's end and cannot get on top.
    [[nodiscard]] Contact end() && {
        if (meets_alike_ && low_.blade_angle_deg == *alike_deg_) return std::move(low_);
        if (meets_alike_ && high_.blade_angle_deg == *alike_deg_) return std::move(high_);
        return high_.energy_nmm > low_.energy_nmm * (1.0 + kEnergyRounding) ? std::move(low_)
                                                                            : std::move(high_);
    }

  private:
    static Look look_of(const Contact& contact) {
        return {contact.blade_angle_deg, contact.torque_nmm};
    }

    /// On both sides of where a flat runs along another blade's and then, if both sides drive it
    /// back there, right there.
    [[nodiscard]] std::optional<double> alike_deg() {
        const double low = low_.blade_angle_deg, high = high_.blade_angle_deg;
        if (!alike_deg_) {
            alike_deg_ = along_another_deg(low_, low, high);
            if (!alike_deg_) alike_deg_ = along_another_deg(high_, low, high);
            return alike_deg_ ? std::optional(*alike_deg_ - kAlikeDeg) : std::nullopt;
        }
        const bool driven_back = low_last_ == (alike_looks_ == 0);
        if (alike_looks_ > 1 || !driven_back) {
            alike_looks_ = std::max(alike_looks_, 2);
            return std::nullopt;
        }
        if (alike_looks_++ == 0) return *alike_deg_ + kAlikeDeg;
        meets_alike_ = true;
        return alike_deg_;
    }

    /// Whether torque rises by far more between both sides than it does on either.
    [[nodiscard]] bool jumps() const {
        constexpr double far_more = 8.0;
        const double rate = std::max(std::abs(low_rate_), std::abs(high_rate_));
        return looks_ > 2 && high_.torque_nmm - low_.torque_nmm > far_more * rate * gap_deg();
    }

    [[nodiscard]] double secant_deg() const {
        const double rise = last_.torque_nmm - before_.torque_nmm;
        return last_.angle_deg - last_.torque_nmm * (last_.angle_deg - before_.angle_deg) / rise;
    }

    /// Where both energies, each with the torque it has and as that changes, are alike; a little
    /// beyond, where one side alone has come near.
    [[nodiscard]] double meeting_deg() {
        constexpr int steps = 3;
        const double gap = radians(gap_deg());
        const double low_bend = degrees(low_rate_), high_bend = degrees(high_rate_);
        const double fall = low_.energy_nmm - high_.energy_nmm;
        const double low = low_.torque_nmm, high = high_.torque_nmm;
        double way = (fall + high * gap) / (high - low);
        for (int step = 0; step < steps; ++step) {
            const double left = gap - way;
            const double apart =
                fall + way * (low + 0.5 * low_bend * way) + left * (high - 0.5 * high_bend * left);
            const double rate = low + low_bend * way - high + high_bend * left;
            if (!(rate < 0.0)) break;
            way -= apart / rate;
        }
        const double angle = low_.blade_angle_deg + degrees(way);
        const double moved = std::abs(angle - std::exchange(meeting_deg_, angle));
        if (run_ < 2) return angle;
        const double past = std::min(std::max(2.0 * moved, 0.5 * kSeatedDeg), 0.5 * gap_deg());
        return low_last_ ? angle + past : angle - past;
    }

    Contact low_, high_;
    Look before_, last_;
    double low_rate_ = 0.0, high_rate_ = 0.0;  ///< of the torque, per deg
    double meeting_deg_ = 0.0;
    std::optional<double> alike_deg_;
    int alike_looks_ = 0;
    bool meets_alike_ = false;
    bool low_last_ = false;
    bool poor_ = false;  ///< the last look has left much of its side's torque
    int run_ = 0, looks_ = 0;
};

}  // namespace

Contact detail::seat_between(const ContactAt& at, Contact low, Contact high, double nothing_nmm) {
    Between between(std::move(low), std::move(high));
    for (int look = 0; !between.told(); ++look) {
        Contact there = at(look < kMostLooks ? between.next_deg() : between.middle_deg());
        if (std::abs(there.torque_nmm) <= nothing_nmm) return there;
        between.add(std::move(there));
    }
    return std::move(between).end();
}

std::optional<Contact> detail::rest_from(const ContactAt& at,
                                         double start_deg,
                                         const Standing& standing) {
    constexpr double first_deg = 0.01, longest_deg = 1.0, beyond = 1.2;
    Contact last = at(start_deg);
    if (last.count == 0 || last.torque_nmm == 0.0) return last;
    const double downhill = last.torque_nmm > 0.0 ? -1.0 : 1.0;
    for (double step = first_deg;;) {
        const double angle = last.blade_angle_deg + downhill * step;
        if (std::abs(angle - standing.blade_angle_deg) > standing.reach_deg) return std::nullopt;
        Contact next = at(angle);
        if (next.count == 0) return letting_go_soon(at, last, next);
        if (next.torque_nmm == 0.0) return next;
        if (next.torque_nmm * downhill > 0.0) {
            return downhill > 0.0 ? seat_between(at, std::move(last), std::move(next))
                                  : seat_between(at, std::move(next), std::move(last));
        }
        const double gain = 1.0 - next.torque_nmm / last.torque_nmm;
        const double way = gain > 0.0 ? beyond * step * (1.0 - gain) / gain : longest_deg;
        step = std::clamp(way, first_deg, longest_deg);
        last = std::move(next);
    }
}

}  // namespace backspring

#include "backspring/strength/plastic_set.hpp"

#include <algorithm>
#include <cmath>

#include "../core/root.hpp"
#include "backspring/core/require.hpp"

namespace backspring {
namespace {

// Steps of five degrees miss far less of a peak than this share of it.
constexpr double kNearYield = 0.9;
constexpr double kElasticAgain = 1e-6;
constexpr double kSettledMm = 1e-8;

double angle_of(const Step& step) { return step.turn.contact.blade_angle_deg; }

std::span<const Load> real(const std::array<Load, 2>& forces, const Contact& contact) {
    return {forces.data(), static_cast<std::size_t>(contact.count)};
}

/// Stress at an angle if nothing yielded.
struct StressedAngle {
    double stress_mpa;
    double blade_angle_deg;
};

/// The greatest stress near a step that its neighbours do not pass.
StressedAngle refined(const Action& action, std::span<const Step> steps, std::size_t i) {
    const auto at = [&](double angle) {
        return peak_stress(action, contact_at(action.joint, angle)).stress_mpa;
    };
    const double low = angle_of(steps[i == 0 ? 0 : i - 1]);
    const double high = angle_of(steps[std::min(i + 1, steps.size() - 1)]);
    const double best = find_maximum(at, low, high);
    return {at(best), best};
}

/// Angles at which an elastic spring would be stressed beyond yielding: the peaks of the travel,
/// between steps too, in their order, then the other steps.
std::vector<StressedAngle> stressed_angles(const Action& action,
                                           std::span<const Step> steps,
                                           double yield_mpa) {
    std::vector<StressedAngle> angles, others;
    const auto stress = [&](std::size_t i) { return steps[i].peak.stress_mpa; };
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (stress(i) <= kNearYield * yield_mpa) continue;
        const bool falls_after = i + 1 == steps.size() || stress(i + 1) < stress(i);
        const bool rose_before = i == 0 || stress(i - 1) <= stress(i);
        if (falls_after && rose_before) angles.push_back(refined(action, steps, i));
        others.push_back({stress(i), angle_of(steps[i])});
    }
    angles.insert(angles.end(), others.begin(), others.end());
    std::erase_if(angles, [&](const auto& angle) { return angle.stress_mpa <= yield_mpa; });
    return angles;
}

/// A spring on its way through the travel.
class Opening {
  public:
    Opening(const Joint& joint, const Spring& spring, double yield_mpa)
        : joint_(joint), moved_(joint), plastic_(spring, yield_mpa) {}

    /// Bends the spring as far as the tang makes it at one angle; whether it yields further.
    bool pass(double blade_angle_deg) {
        Contact contact = contact_at(moved_, blade_angle_deg);
        const auto elastic = loads(contact);
        if (plastic_.excess(real(elastic, contact)) <= kElasticAgain) return false;
        // The face the tang meets depends on the set, and the set on where the tang meets it.
        for (int round = 0; round < 100; ++round) {
            const std::vector<Load> forces = plastic_.forces(holds(contact));
            const FaceShift next = plastic_.shift_after(forces);
            const double end = joint_.pad.end_mm;
            const double change = std::abs(next.at_mm(end) - shift_.at_mm(end)) +
                                  std::abs(next.slope - shift_.slope) * end;
            shift_ = next;
            moved_.face_mm = joint_.face_mm + shift_.height_mm;
            moved_.face_slope = joint_.face_slope + shift_.slope;
            if (change < kSettledMm) {
                plastic_.bend(forces);
                return true;
            }
            contact = contact_at(moved_, blade_angle_deg);
            if (contact.count == 0) break;
        }
        throw NoConvergence("set: contact and set do not agree at " +
                            with_unit(blade_angle_deg, "deg"));
    }

    [[nodiscard]] const FaceShift& shift() const { return shift_; }
    [[nodiscard]] std::vector<PlasticZone> zones() const { return plastic_.zones(); }

  private:
    [[nodiscard]] std::vector<Hold> holds(const Contact& contact) const {
        std::vector<Hold> places;
        for (const Touch& touch : contact.all()) {
            const double free = joint_.face_mm + joint_.face_slope * touch.x_mm;
            places.push_back({touch.x_mm, touch.height_mm - free});
        }
        return places;
    }

    const Joint& joint_;  // as fitted
    Joint moved_;         // with the face as it is by now
    PlasticSpring plastic_;
    FaceShift shift_;
};

double peak_torque(const Action& action, std::span<const Step> steps, std::size_t i) {
    const auto at = [&](double angle) { return turn_at(action, angle).opening_nmm(); };
    const double low = angle_of(steps[i == 0 ? 0 : i - 1]);
    const double high = angle_of(steps[std::min(i + 1, steps.size() - 1)]);
    return std::max(at(find_maximum(at, low, high)), at(angle_of(steps[i])));
}

}  // namespace

PlasticSet plastic_set(const Action& action,
                       const Spring& spring,
                       std::span<const Step> steps,
                       double yield_mpa) {
    Requirements rules;
    rules.positive("yield_mpa", yield_mpa, 1e9, "MPa");
    rules.throw_if_any();
    const Joint& joint = action.joint;
    PlasticSet set;
    set.preload_before_mm = -joint.face_slope * joint.pivot_mm;
    set.preload_opened_mm = set.preload_settled_mm = set.preload_before_mm;
    const auto angles = stressed_angles(action, steps, yield_mpa);
    if (angles.empty()) return set;

    constexpr int most_openings = 100;
    Opening opening(joint, spring, yield_mpa);
    const auto lost = [&] { return opening.shift().at_mm(joint.pivot_mm); };
    for (bool changed = true; changed; set.openings_to_settle += changed ? 1 : 0) {
        if (set.openings_to_settle == most_openings) {
            throw NoConvergence("set: the spring goes on yielding with every opening");
        }
        changed = false;
        for (const auto& angle : angles) changed |= opening.pass(angle.blade_angle_deg);
        if (set.openings_to_settle == 0) set.preload_opened_mm = set.preload_before_mm - lost();
    }
    const auto less = [](const auto& a, const auto& b) { return a.stress_mpa < b.stress_mpa; };
    set.blade_angle_deg = std::max_element(angles.begin(), angles.end(), less)->blade_angle_deg;
    set.yielded = true;
    set.elastic_force_n = contact_at(joint, set.blade_angle_deg).force_n;
    set.shift = opening.shift();
    set.force_n = contact_at(with_shift(joint, set.shift), set.blade_angle_deg).force_n;
    set.drop_pivot_mm = lost();
    set.drop_dial_mm = set.shift.at_mm(joint.dial_mm);
    set.drop_pad_start_mm = set.shift.at_mm(joint.pad.start_mm);
    set.drop_pad_end_mm = set.shift.at_mm(joint.pad.end_mm);
    set.preload_settled_mm = set.preload_before_mm - set.drop_pivot_mm;
    set.zones = opening.zones();
    return set;
}

Joint with_shift(const Joint& joint, const FaceShift& shift) {
    Joint moved = joint;
    moved.face_mm += shift.height_mm;
    moved.face_slope += shift.slope;
    return moved;
}

PeakTorques peak_torques(const Action& action, std::span<const Step> steps, const PlasticSet& set) {
    if (steps.empty()) return {};
    const auto greatest = [&](const Action& of, auto torque) {
        std::size_t top = 0;
        double largest = torque(steps[0]);
        for (std::size_t i = 1; i < steps.size(); ++i) {
            const double here = torque(steps[i]);
            if (here > largest) largest = here, top = i;
        }
        return peak_torque(of, steps, top);
    };
    const auto known = [](const Step& step) { return step.turn.opening_nmm(); };
    const double before = greatest(action, known);
    if (!set.yielded) return {before, before};
    Action after = action;
    after.joint = with_shift(action.joint, set.shift);
    const auto again = [&](const Step& s) { return turn_at(after, angle_of(s)).opening_nmm(); };
    return {before, greatest(after, again)};
}

}  // namespace backspring

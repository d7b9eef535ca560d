#include "figures.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/check/solution.hpp"
#include "backspring/design/joint_of.hpp"
#include "response.hpp"

namespace backspring {
namespace {

/// Whether a curve's top is a corner: it falls off with a slope, and not as the square, on a side.
template <class Value>
bool is_corner(Value value, double at_deg) {
    constexpr double near = 2e-3, level = 1e-5;
    const double top = value(at_deg);
    const auto slope = [&](double side) {
        const double once = top - value(at_deg + side * near);
        const double twice = top - value(at_deg + 2.0 * side * near);
        return (4.0 * once - twice) / (2.0 * near);
    };
    return std::max(slope(1.0), slope(-1.0)) > level * std::abs(top);
}

/// Whether two ways come as high: the higher of them changes over here.
bool alike(const std::optional<double>& a, const std::optional<double>& b) {
    constexpr double level = 1e-6;
    return a && b && std::abs(*a - *b) <= level * std::abs(*a);
}

class Watch {
  public:
    explicit Watch(const Design& design) : design_(design), solution_(design) {
        torque();
        stiffness();
        stress();
        readings("reading_loaded", JointKind::loaded, solution_.joint(), solution_.rests());
        readings("reading_unloaded", JointKind::unloaded, solution_.unloaded_joint(),
                 solution_.unloaded_rests());
    }

    [[nodiscard]] Figures take() { return std::move(figures_); }

  private:
    std::size_t watch(JointKind kind, const Joint& joint, const State& state) {
        figures_.watched.push_back({kind, joint, state});
        return figures_.watched.size() - 1;
    }

    [[nodiscard]] Answering respond_at(std::size_t watched,
                                       Asked asked,
                                       double moment_at_mm = 0.0) const {
        const Watched& at = figures_.watched[watched];
        return respond(at.joint, design_.friction, at.state, asked, moment_at_mm);
    }

    [[nodiscard]] bool at_rest(const Contact& contact) {
        const Rests& rests = solution_.rests();
        const auto at = [&](const std::optional<Contact>& rest) {
            return rest && rest->blade_angle_deg == contact.blade_angle_deg;
        };
        return at(rests.closed) || at(rests.half_stop);
    }

    /// A contact on the way; a peak may also lie at a rest, and moves with it.
    std::size_t watch_loaded(const Contact& contact) {
        const Joint& joint = solution_.joint();
        const Seat seat = at_rest(contact) ? Seat::free : Seat::held;
        return watch(JointKind::loaded, joint, make_state(joint, contact, seat));
    }

    /// Whether a peak is a corner of its curve; one at a rest moves with that.
    template <class Value>
    bool at_corner(const Contact& contact, Value value) {
        if (at_rest(contact)) return false;
        const Action& whole = solution_.action();
        return is_corner([&](double deg) { return value(whole, turn_at(whole, deg)); },
                         contact.blade_angle_deg);
    }

    /// The worst stress on the way on which the worst of all is not.
    std::optional<double> stress_of_other_way(const Contact& worst) {
        const auto& ways = solution_.ways();
        if (ways.size() < 2) return std::nullopt;
        const bool first = worst.blade_angle_deg <= ways.front().to().contact.blade_angle_deg;
        return way_peak_stress_mpa(solution_, first ? 1 : 0);
    }

    void torque() {
        const std::optional<Turn> peak = hardest_turn(solution_);
        if (!peak) return;
        const std::size_t i = watch_loaded(peak->contact);
        const Answering answer = respond_at(i, Asked::opening_torque);
        figures_.all.push_back(
            {"peak_torque_nmm", answer.value, {{i, answer.per_element}}, std::nullopt});
        figures_.all.back().at_kink =
            at_corner(peak->contact,
                      [](const Action&, const Turn& turn) { return turn.opening_nmm(); }) ||
            alike(way_peak_torque_nmm(solution_, 0), way_peak_torque_nmm(solution_, 1));
    }

    void stiffness() {
        const Joint joint =
            make_joint(design_, JointKind::stiffness, solution_.joint().flexibility);
        const std::size_t i = watch(JointKind::stiffness, joint, State{});
        const double x = joint.pivot_mm;
        const Compliance own = compliance(joint.flexibility, x, x);
        Elements e = Elements::Zero();
        e[element::dial_a0] = e[element::root] = x * x;
        e[element::dial_a1] = -2.0 * x;
        e[element::dial_a2] = e[element::dial_shear] = 1.0;
        e[element::dial] = 2.0 * own.rad_per_n;
        const double stiffness = 1.0 / own.mm_per_n;
        figures_.all.push_back(
            {"stiffness_n_per_mm", stiffness, {{i, -stiffness * stiffness * e}}, std::nullopt});
    }

    void stress() {
        const auto& [contact, peak] = solution_.most_stressed();
        const std::size_t i = watch_loaded(contact);
        const double station = std::max(peak.station_mm, 0.0);
        const Answering moment = respond_at(i, Asked::moment, station);
        if (!(moment.value > 0.0)) return;
        double ahead = 0.0;
        for (const Touch& touch : contact.all()) ahead += touch.x_mm > station ? touch.force_n : 0;
        const double per_moment = peak.stress_mpa / moment.value;
        figures_.all.push_back({"travel_peak_stress_mpa",
                                peak.stress_mpa,
                                {{i, per_moment * moment.per_element}},
                                WorstPlace{peak.station_mm, moment.value, ahead}});
        figures_.all.back().at_kink =
            at_corner(contact,
                      [](const Action& whole, const Turn& turn) {
                          return peak_stress(whole, turn.contact).stress_mpa;
                      }) ||
            alike(peak.stress_mpa, stress_of_other_way(contact));
    }

    void readings(const std::string& name, JointKind kind, const Joint& joint, const Rests& rests) {
        const std::size_t open = watch(kind, joint, make_state(joint, rests.open, Seat::held));
        const Answering datum = respond_at(open, Asked::deflection);
        const auto add = [&](const std::string& position, const std::optional<Contact>& rest) {
            if (!rest) return;
            const std::size_t i = watch(kind, joint, make_resting_state(joint, *rest));
            const Answering there = respond_at(i, Asked::deflection);
            figures_.all.push_back({name + "_" + position + "_mm",
                                    there.value - datum.value,
                                    {{i, there.per_element}, {open, -datum.per_element}},
                                    std::nullopt});
        };
        add("half_stop", rests.half_stop);
        add("closed", rests.closed);
    }

    const Design& design_;
    Solution solution_;
    Figures figures_;
};

}  // namespace

Joint detail::make_joint(const Design& design,
                         JointKind kind,
                         const std::optional<Flexibility>& flexibility) {
    if (kind == JointKind::unloaded) {
        return make_unloaded_joint(design.own().pad, design.own().tang, design.own().fit);
    }
    Fit fit = design.own().fit;
    if (kind == JointKind::stiffness) fit.dial_mm = design.own().tang.pivot_mm;
    Joint joint = with_clearances(make_joint(flexibility ? *flexibility : make_flexibility(design),
                                             design.own().pad, design.own().tang, fit),
                                  design.spring, design.own().tang);
    joint.frame = frame_of(design);
    return joint;
}

Figures detail::make_figures(const Design& design) { return Watch(design).take(); }

}  // namespace backspring

#include "backspring/check/solution.hpp"

#include <algorithm>
#include <utility>

#include "backspring/action/end_stop.hpp"
#include "backspring/action/unloaded_readings.hpp"
#include "backspring/check/look.hpp"
#include "backspring/design/joint_of.hpp"
#include "backspring/strength/yielding.hpp"

namespace backspring {
namespace {

/// A part that is worked out when first asked for.
template <class Part, class Work>
Part& kept(std::optional<Part>& part, Work work) {
    if (!part) part.emplace(work());
    return *part;
}

const Design& sound(const Design& design) {
    if (std::vector<Fault> broken = faults(design); !broken.empty()) {
        throw InvalidInput(std::move(broken));
    }
    return design;
}

}  // namespace

Solution::Solution(const Design& design)
    : design_(sound(design)),
      action_(make_action(design.spring, make_joint(design), {}, design.friction)) {}

Solution::Solution(const Design& design, Joint loaded)
    : design_(sound(design)),
      action_(make_action(design.spring, std::move(loaded), {}, design.friction)) {}

const Action& Solution::action() {
    if (!has_probe_) action_.probe = make_stress_probe(design_);
    has_probe_ = true;
    return action_;
}

const Rests& Solution::rests() {
    return kept(rests_, [&] { return find_rests(joint(), has_half_stop()); });
}

const Readings& Solution::readings() {
    return kept(readings_, [&] { return backspring::readings(joint(), rests()); });
}

const Joint& Solution::unloaded_joint() {
    return kept(unloaded_joint_, [&] { return make_unloaded_joint(design_); });
}

const Rests& Solution::unloaded_rests() {
    return kept(unloaded_rests_,
                [&] { return backspring::unloaded_rests(unloaded_joint(), design_.own().tang); });
}

const Readings& Solution::unloaded_readings() {
    return kept(unloaded_readings_, [&] {
        return backspring::unloaded_readings(unloaded_joint(), design_.own().tang);
    });
}

const Turns& Solution::travel() {
    return kept(travel_, [&] {
        const auto& [closed, half_stop, open] = rests();
        std::vector<Contact> marks;
        marks.reserve(3);
        const auto mark = [&](const Contact& rest) {
            if (!marks.empty() && rest.blade_angle_deg <= marks.back().blade_angle_deg) return;
            // Beside others a rest is told no closer than those seat.
            marks.push_back(joint().alone() ? without_stop(joint(), rest)
                                            : contact_at(joint(), rest.blade_angle_deg));
        };
        mark(closed ? *closed : contact_at(joint(), 0.0));
        if (half_stop) mark(*half_stop);
        mark(open);
        return Turns(action(), std::move(marks));
    });
}

std::vector<LazyStroke>& Solution::ways() {
    return kept(ways_, [&] {
        std::vector<LazyStroke> ways;
        ways.reserve(2);
        const auto& [closed, half_stop, leaning] = rests();
        // The hand takes the blade off its stop first.
        const Contact open = without_stop(joint(), leaning);
        // Beside a prouder tang a blade may lie loose in the open; it opens and shuts none the
        // less.
        const bool loose = !joint().alone() && open.count == 0;
        if (!closed || (open.torque_nmm >= 0.0 && !loose)) return ways;
        const auto add = [&](const Contact& from, const Contact& to) {
            ways.emplace_back(travel(), from.blade_angle_deg, to.blade_angle_deg);
        };
        add(*closed, half_stop ? *half_stop : open);
        if (half_stop) add(*half_stop, open);
        return ways;
    });
}

const std::vector<Stroke>& Solution::strokes() {
    return kept(strokes_, [&] {
        std::vector<Stroke> strokes;
        for (LazyStroke& way : ways()) {
            if (const auto stroke = make_stroke(way)) strokes.push_back(*stroke);
        }
        return strokes;
    });
}

Peak Solution::strongest() {
    if (const TravelForces forces(travel()); forces.tells()) return forces.largest({1.0, 0.0});
    const Turn turn = largest(travel(), [](const Turn& each) { return each.contact.force_n; });
    return {turn.contact.force_n, angle_of(&turn)};
}

const Stressed& Solution::most_stressed() {
    return kept(most_stressed_, [&] {
        const Action& whole = action();
        const Contact contact = backspring::most_stressed(whole, travel().pieces()).contact;
        return Stressed{contact, peak_stress(whole, contact)};
    });
}

StressRanges& Solution::ranges() {
    return kept(ranges_, [&] { return StressRanges(design_.spring, travel()); });
}

double Solution::stiffness_n_per_mm() const {
    const double pivot = joint().pivot_mm;
    const double own = deflection_per_force(joint().flexibility, pivot, pivot);
    if (!joint().far_end) return 1.0 / own;
    // The tang at the far end taken to bear at its pivot, and to stand still there.
    const FarEnd& far = *joint().far_end;
    const double other = far.blades.front().tang.pivot_mm;
    const double there = deflection_per_force(far.flexibility, other, other);
    if (far.turns) return 1.0 / (own + pivot / other * (pivot / other) * there);
    double cross = pivot * other * far.cross_rad_per_nmm;
    if (const auto& frame = far.through_frame) {
        cross +=
            frame->lift_mm_per_n + frame->lift_mm_per_nmm * other + frame->turn_rad_per_n * pivot;
    }
    return 1.0 / (own - cross * cross / there);
}

std::optional<Turn> hardest_turn(Solution& solution) {
    std::optional<Turn> hardest;
    for (LazyStroke& way : solution.ways()) {
        if (!way.has_crest()) continue;
        const Turn& peak = way.opening_peak();
        if (!hardest || peak.opening_nmm() > hardest->opening_nmm()) hardest = peak;
    }
    return hardest;
}

std::optional<double> peak_torque_nmm(Solution& solution) {
    const auto hardest = hardest_turn(solution);
    return hardest ? std::optional(hardest->opening_nmm()) : std::nullopt;
}

std::optional<double> way_peak_torque_nmm(Solution& solution, std::size_t way) {
    auto& ways = solution.ways();
    if (way >= ways.size() || !ways[way].has_crest()) return std::nullopt;
    return ways[way].opening_peak().opening_nmm();
}

std::optional<double> way_peak_stress_mpa(Solution& solution, std::size_t way) {
    auto& ways = solution.ways();
    if (way >= ways.size()) return std::nullopt;
    const Action& whole = solution.action();
    return peak_stress(whole, most_stressed(whole, ways[way].pieces()).contact).stress_mpa;
}

std::optional<double> peak_pull_n(Solution& solution) {
    const auto& nick = solution.design().own().blade.nail_nick_mm;
    if (!nick) return std::nullopt;
    const auto torque = peak_torque_nmm(solution);
    return torque ? std::optional(*torque / *nick) : std::nullopt;
}

std::optional<Band> yield_margin(Solution& solution) {
    return yield_margin(solution.design().strength.yield_mpa,
                        solution.most_stressed().peak.stress_mpa);
}

bool snaps_everywhere(Solution& solution) {
    auto& ways = solution.ways();
    const std::size_t whole = solution.has_half_stop() ? 2 : 1;
    return ways.size() == whole &&
           std::all_of(ways.begin(), ways.end(), [](LazyStroke& way) { return way.has_crest(); });
}

}  // namespace backspring

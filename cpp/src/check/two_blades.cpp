#include "backspring/check/two_blades.hpp"

#include <algorithm>
#include <string_view>

#include "../check/two_parts.hpp"
#include "backspring/core/require.hpp"
#include "backspring/spring/stretches.hpp"

namespace backspring {
namespace {

bool pinned(const TwoBlades& two) { return two.first.spring.support.kind == SupportKind::two_pins; }

/// Key of the design file for a fault of the second end; none where the first end tells it.
std::string key_of_second(const std::string& key) {
    if (key == "spring.pad") return "second.pad";
    for (const std::string_view table : {"tang.", "fit.", "blade."}) {
        if (key.starts_with(table)) return "second." + key;
    }
    return "";
}

void support_rule(Requirements& rules, const Support& support) {
    rules.require(support.kind != SupportKind::root_stiffness, "spring.support", [] {
        return std::string("must be by two pins or by a middle pin alone with two blades");
    });
}

/// The way between the pins as a load on it: its moment runs straight from one root to the other.
Load between_pins(double span_mm, double first_nmm, double second_nmm) {
    // Where both are alike no force passes; one far away and hardly felt stands for that.
    constexpr double far_mm = 1e12;
    const double force = (second_nmm - first_nmm) / span_mm;
    if (force * far_mm <= first_nmm) return {far_mm, first_nmm / far_mm};
    return {first_nmm / force, force};
}

}  // namespace

Design second_end(const TwoBlades& two) {
    Design design = two.first;
    design.blades.push_back(two.second);
    design.blades.back().end = End::rear;
    design = seen_from(design, design.blades.size() - 1);
    design.blades.resize(1);
    return design;
}

std::vector<Fault> faults(const TwoBlades& two) {
    Requirements rules;
    support_rule(rules, two.first.spring.support);
    std::vector<Fault> broken = faults(two.first);
    broken.insert(broken.begin(), rules.faults().begin(), rules.faults().end());
    for (Fault& fault : faults(second_end(two))) {
        fault.key = key_of_second(fault.key);
        if (!fault.key.empty()) broken.push_back(std::move(fault));
    }
    return broken;
}

TwoJoints make_two_joints(const TwoBlades& two) {
    if (std::vector<Fault> broken = faults(two); !broken.empty()) {
        throw InvalidInput(std::move(broken));
    }
    const Design second = second_end(two);
    return {
        .first = make_joint(two.first.spring, two.first.own().pad, two.first.own().tang,
                            two.first.own().fit),
        .second = make_joint(second.spring, second.own().pad, second.own().tang, second.own().fit),
        .turns = !pinned(two),
        .cross_rad_per_nmm = pinned(two) ? cross_rotation_rad_per_nmm(two.first.spring) : 0.0};
}

TwoContacts two_contacts_at(const TwoBlades& two, double first_deg, double second_deg) {
    return contacts_at(make_two_joints(two), {first_deg}, {second_deg}).value();
}

WholeSpring detail::make_whole_spring(const TwoBlades& two) {
    const Design second = second_end(two);
    const double span = pinned(two) ? two.first.spring.support.rear_pin_mm : 0.0;
    const auto probe = [](const Design& end) {
        return stress_probe_between(end.spring, 0.0,
                                    std::max(last_change_mm(end.spring), end.own().pad.end_mm));
    };
    WholeSpring whole{probe(two.first), probe(second), {}, {}, span};
    if (span > 0.0) {
        whole.between = stress_probe_between(two.first.spring, -span, 0.0);
        whole.between_turned = stress_probe_between(second.spring, -span, 0.0);
    }
    return whole;
}

PeakStress detail::peak_stress(const WholeSpring& whole, const TwoContacts& both) {
    const auto of_end = [](const StressProbe& probe, const Contact& contact) {
        const auto forces = loads(contact);
        return peak_stress(probe, {forces.data(), static_cast<std::size_t>(contact.count)});
    };
    PeakStress worst = of_end(whole.first, both.first);
    const auto consider = [&](PeakStress peak, bool turned) {
        if (peak.stress_mpa <= worst.stress_mpa) return;
        if (turned) peak.station_mm = -whole.span_mm - peak.station_mm;
        worst = peak;
    };
    consider(of_end(whole.second, both.second), true);
    if (whole.span_mm == 0.0) return worst;
    const double first = root_moment_nmm(both.first), second = root_moment_nmm(both.second);
    const bool turned = first > second;  // so that the moment falls towards the front
    const Load load = turned ? between_pins(whole.span_mm, second, first)
                             : between_pins(whole.span_mm, first, second);
    consider(peak_stress(turned ? whole.between_turned : whole.between, {&load, 1}), turned);
    return worst;
}

}  // namespace backspring

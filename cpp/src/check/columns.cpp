#include "backspring/check/columns.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/require.hpp"
#include "backspring/spring/stretches.hpp"

namespace backspring {
namespace {

/// How far ahead of the pin next to them blades at the rear can bear; 0 without one [mm].
double rear_overhang_mm(const Design& design) {
    double end = 0.0;
    for (const Blade& blade : design.blades) {
        if (blade.end == End::rear) end = std::max(end, blade.pad.end_mm);
    }
    return end;
}

std::vector<double> stations(const Design& design, double spacing_mm) {
    const Spring& spring = design.spring;
    const bool pinned = spring.support.kind == SupportKind::two_pins;
    const double rear = pinned ? -spring.support.rear_pin_mm : 0.0;
    const double end_mm = design.own().pad.end_mm, overhang = rear_overhang_mm(design);
    std::vector<double> places;
    const auto add = [&](double from, double to) {
        for (const Stretch& stretch : cut_into_stretches(spring, from, to)) {
            const double length = stretch.end_mm - stretch.start_mm;
            const int parts = static_cast<int>(std::ceil(length / spacing_mm));
            for (int i = 0; i < parts; ++i) {
                places.push_back(stretch.start_mm + length * i / parts);
            }
        }
    };
    if (overhang > 0.0) add(rear - overhang, rear);
    if (pinned) add(rear, 0.0);
    add(0.0, end_mm);
    places.push_back(end_mm);
    return places;
}

}  // namespace

Sweep sweep(const Design& design, double step_deg, double from_deg, double to_deg) {
    return columns(sweep(make_action(design), from_deg, to_deg, step_deg));
}

SpringAlong spring_along(const Design& design, double blade_angle_deg, double spacing_mm) {
    Requirements rules;
    rules.in_range("spacing_mm", spacing_mm, 1e-3, 100.0, "mm");
    rules.throw_if_any();
    const Action action = make_action(design);
    const Contact contact = contact_at(action.joint, blade_angle_deg);
    const Loads bearing = loads(contact);
    const std::vector<double> places = stations(design, spacing_mm);
    const auto column = [&](auto value) {
        Eigen::ArrayXd values(static_cast<Eigen::Index>(places.size()));
        for (std::size_t i = 0; i < places.size(); ++i) {
            values[static_cast<Eigen::Index>(i)] = value(places[i]);
        }
        return values;
    };
    const Joint& joint = action.joint;
    return {
        .station_mm = column([](double x) { return x; }),
        .thickness_mm = column([&](double x) { return thickness_mm(design.spring.thickness, x); }),
        .face_mm = column([&](double x) { return joint.face_mm + joint.face_slope * x; }),
        .deflection_mm = column([&](double x) { return deflection_mm(joint, contact, x); }),
        .back_stress_mpa =
            column([&](double x) { return fibre_stress(design.spring, bearing, x).back_mpa; }),
        .belly_stress_mpa =
            column([&](double x) { return fibre_stress(design.spring, bearing, x).belly_mpa; })};
}

}  // namespace backspring

#include <algorithm>
#include <array>
#include <optional>

#include "backspring/spring/bending.hpp"
#include "backspring/strength/curved_beam.hpp"
#include "backspring/strength/hole_edge.hpp"
#include "backspring/strength/kink.hpp"
#include "backspring/strength/shoulder.hpp"
#include "verdict_parts.hpp"

namespace backspring {
namespace {

/// A local stress; nothing where the shape is outside what the models were held to.
template <class Stress>
std::optional<LocalStress> if_in_range(Stress stress) {
    try {
        return stress();
    } catch (const OutOfRange&) {
        return std::nullopt;
    }
}

Margin local_margin(const Design& design, const Worked& worked, const Notch& notch) {
    const Band& yield = design.strength.yield_mpa;
    const LocalStress& local = notch.local;
    Margin margin = make_margin(notch.kind, local.local_mpa, yield.value, Quantity::stress);
    if (local.local_mpa > 0.0) margin.margin_low = yield.low / local.local_mpa;
    margin.station_mm = local.station_mm;
    margin.blade_angle_deg = worked.worst.blade_angle_deg;
    margin.sources = {notch.source};
    margin.parameters = {{"nominal", local.nominal_mpa, Quantity::stress}};
    return margin;
}

double moment_at(const Design& design, const Worked& worked, double x_mm) {
    return bending_moment_nmm(design.spring, loads(worked.worst), x_mm);
}

void add_hole(std::vector<Notch>& notches, const Design& design, const Worked& worked) {
    const Hole* hole = hole_for(HoleFor::middle_pin, design.spring.holes);
    if (!hole || hole->diameter_mm <= 0.0) return;
    const auto edge = if_in_range([&] {
        const Spring& spring = design.spring;
        const double thick = thickness_mm(spring.thickness, 0.0) * lean_cosine(spring, 0.0);
        return hole_edge_stress(thick, width_at_mm(spring, 0.0), *hole,
                                moment_at(design, worked, 0.0));
    });
    if (edge) notches.push_back({MarginKind::hole_edge, "roark", *edge, 0.5 * hole->diameter_mm});
}

/// The worst local stress among places ahead of the middle pin that the moment pulls on.
template <class Notch, class Local>
std::optional<LocalStress> worst_of(const std::vector<Notch>& places,
                                    const Design& design,
                                    const Worked& worked,
                                    Local local_at) {
    std::optional<LocalStress> worst;
    for (const Notch& place : places) {
        const double moment = moment_at(design, worked, place.station_mm);
        if (place.station_mm <= 0.0 || moment <= 0.0) continue;
        const auto local = if_in_range([&] { return local_at(place, moment); });
        if (local && (!worst || local->local_mpa > worst->local_mpa)) worst = local;
    }
    return worst;
}

void add_outline(std::vector<Notch>& notches,
                 const Design& design,
                 const Worked& worked,
                 double radius) {
    const auto kink_at = [&](const Kink& kink, double moment) {
        const double per_moment =
            outer_stress_per_moment(section_at(design.spring, kink.station_mm));
        return local_stress(moment * per_moment,
                            kink_factor(kink.angle_rad, kink.thickness_mm, radius),
                            kink.station_mm);
    };
    const auto shoulder_at = [&](const Shoulder& shoulder, double moment) {
        const double thin = shoulder.small_mm;
        const double width = width_at_mm(design.spring, shoulder.station_mm);
        return local_stress(6.0 * moment / (width * thin * thin),
                            one_sided_shoulder_factor(shoulder.large_mm, thin, radius),
                            shoulder.station_mm);
    };
    const auto add = [&](const std::optional<LocalStress>& worst, MarginKind kind,
                         const char* source) {
        if (worst) notches.push_back({kind, source, *worst, radius});
    };
    const Profile& profile = design.spring.thickness;
    add(worst_of(find_kinks(design.spring), design, worked, kink_at), MarginKind::kink,
        "plane-stress-study");
    add(worst_of(find_shoulders(profile), design, worked, shoulder_at), MarginKind::shoulder,
        "roark");
}

/// What a hollow belly's inner radius makes of the bending stress at a station.
std::optional<LocalStress> hollow_stress(const Design& design,
                                         const Worked& worked,
                                         double x_mm,
                                         double radius_mm) {
    const double moment = moment_at(design, worked, x_mm);
    if (x_mm < 0.0 || moment <= 0.0) return std::nullopt;
    const Section section = section_at(design.spring, x_mm);
    const double nominal = moment * section.belly_mm / section.inertia_mm4;
    const double thick = section.back_mm + section.belly_mm;
    return if_in_range(
        [&] { return local_stress(nominal, curvature_factors(thick, radius_mm).inner, x_mm); });
}

/// A hollow belly of a stated radius is stressed more than a straight one all along; it counts
/// where that is worst. Else each hollow stretch of the mid-line is judged at its own radius.
void add_curve(std::vector<Notch>& notches, const Design& design, const Worked& worked) {
    const auto add = [&](const std::optional<LocalStress>& local, double radius) {
        if (local) notches.push_back({MarginKind::curve, "shigley-9", *local, radius});
    };
    if (const auto& radius = design.surface.curve_radius_mm) {
        const double x = peak_stress(worked.action, worked.worst).station_mm;
        add(hollow_stress(design, worked, x, *radius), *radius);
        return;
    }
    std::optional<LocalStress> worst;
    double worst_radius = 0.0;
    for (const HollowCurve& curve : hollow_curves(design.spring.mid_line)) {
        const double thick = thickness_mm(design.spring.thickness, curve.x_mm);
        const double radius =
            curve.radius_mm - 0.5 * thick * lean_cosine(design.spring, curve.x_mm);
        const auto local = hollow_stress(design, worked, curve.x_mm, radius);
        if (!local || (worst && local->local_mpa <= worst->local_mpa)) continue;
        worst = local;
        worst_radius = radius;
    }
    add(worst, worst_radius);
}

}  // namespace

std::vector<Notch> detail::find_notches(const Design& design, const Worked& worked) {
    std::vector<Notch> notches;
    add_hole(notches, design, worked);
    if (const auto& radius = design.surface.kink_radius_mm) {
        add_outline(notches, design, worked, *radius);
    }
    add_curve(notches, design, worked);
    return notches;
}

std::vector<Notch> detail::outline_notches(const Design& design,
                                           const Worked& worked,
                                           double radius_mm) {
    std::vector<Notch> notches;
    add_outline(notches, design, worked, radius_mm);
    return notches;
}

void detail::judge_local(std::vector<Margin>& margins,
                         const Design& design,
                         const Worked& worked,
                         const std::vector<Notch>& notches) {
    for (const Notch& notch : notches) {
        margins.push_back(local_margin(design, worked, notch));
    }
}

}  // namespace backspring

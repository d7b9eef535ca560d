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
        return hole_edge_stress(thickness_mm(design.spring.thickness, 0.0), design.spring.width_mm,
                                *hole, moment_at(design, worked, 0.0));
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

/// Kinks of the belly, and its shoulders with the same radius as fillet.
void add_outline(std::vector<Notch>& notches, const Design& design, const Worked& worked) {
    if (!design.surface.kink_radius_mm) return;
    const double radius = *design.surface.kink_radius_mm;
    const auto kink_at = [&](const Kink& kink, double moment) {
        const double per_moment =
            outer_stress_per_moment(section_at(design.spring, kink.station_mm));
        return local_stress(moment * per_moment,
                            kink_factor(kink.angle_rad, kink.thickness_mm, radius),
                            kink.station_mm);
    };
    const auto shoulder_at = [&](const Shoulder& shoulder, double moment) {
        const double thin = shoulder.small_mm;
        return local_stress(6.0 * moment / (design.spring.width_mm * thin * thin),
                            one_sided_shoulder_factor(shoulder.large_mm, thin, radius),
                            shoulder.station_mm);
    };
    const auto add = [&](const std::optional<LocalStress>& worst, MarginKind kind,
                         const char* source) {
        if (worst) notches.push_back({kind, source, *worst, radius});
    };
    const Profile& profile = design.spring.thickness;
    add(worst_of(find_kinks(profile), design, worked, kink_at), MarginKind::kink,
        "plane-stress-study");
    add(worst_of(find_shoulders(profile), design, worked, shoulder_at), MarginKind::shoulder,
        "roark");
}

/// A hollow belly is stressed more than a straight one all along; it counts where that is worst.
void add_curve(std::vector<Notch>& notches, const Design& design, const Worked& worked) {
    const auto& radius = design.surface.curve_radius_mm;
    const PeakStress peak = peak_stress(worked.action, worked.worst);
    const double moment = moment_at(design, worked, peak.station_mm);
    if (!radius || peak.station_mm < 0.0 || moment <= 0.0) return;
    const double thick = thickness_mm(design.spring.thickness, peak.station_mm);
    const Section section = section_at(design.spring, peak.station_mm);
    const double nominal = moment * section.belly_mm / section.inertia_mm4;
    const double factor = curvature_factors(thick, *radius).inner;
    notches.push_back(
        {MarginKind::curve, "shigley-9", local_stress(nominal, factor, peak.station_mm), *radius});
}

}  // namespace

std::vector<Notch> detail::find_notches(const Design& design, const Worked& worked) {
    std::vector<Notch> notches;
    add_hole(notches, design, worked);
    add_outline(notches, design, worked);
    add_curve(notches, design, worked);
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

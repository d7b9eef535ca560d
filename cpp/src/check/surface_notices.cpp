#include "surface_notices.hpp"

#include <array>
#include <cmath>
#include <string>

#include "fatigue_places.hpp"

namespace backspring {
namespace {

// A file's edge, a small round file, a wheel (common practice, no source).
constexpr std::array kRootRadiiMm{0.3, 1.0, 3.0};

/// The worst kink or step of the belly if all had this root radius.
std::optional<Notch> worst_outline(const Design& design, const Worked& worked, double radius_mm) {
    std::optional<Notch> worst;
    for (const Notch& notch : outline_notches(design, worked, radius_mm)) {
        if (!worst || notch.local.local_mpa > worst->local.local_mpa) worst = notch;
    }
    return worst;
}

/// One root radius: the stress it leaves there, and margins in yield and, if known, in fatigue.
void add_radius(Notice& notice,
                const Design& design,
                Cycles& cycles,
                const Notch& notch,
                const std::string& place) {
    const auto add = [&](const char* name, double value, Quantity quantity) {
        notice.parameters.push_back({name + place, value, quantity});
    };
    const double stress = notch.local.local_mpa;
    add("radius_", notch.root_radius_mm, Quantity::length);
    add("stress_", stress, Quantity::stress);
    add("yield_margin_", design.strength.yield_mpa.value / stress, Quantity::ratio);
    if (design.strength.tensile_mpa.value <= 0.0) return;
    const auto margin = cycles.margin_at(fatigue_place(design, notch));
    if (margin) add("fatigue_margin_", *margin, Quantity::ratio);
}

void add_kinks(std::vector<Notice>& notices, const Design& design, const Worked& worked) {
    if (design.surface.kink_radius_mm) return;
    Notice notice{.code = NoticeCode::kink_not_judged};
    Cycles cycles(design, worked);
    int count = 0;
    for (const double radius : kRootRadiiMm) {
        const auto notch = worst_outline(design, worked, radius);
        if (!notch) continue;
        if (count == 0) {
            notice.names["notch"] = name_of(notch->kind);
            notice.parameters = {{"station", notch->local.station_mm, Quantity::length},
                                 {"nominal", notch->local.nominal_mpa, Quantity::stress}};
        }
        add_radius(notice, design, cycles, *notch, std::to_string(count++));
    }
    if (count > 0) notices.push_back(std::move(notice));
}

/// What is left if the skin bears nothing at the worst place: an end, for it bears a little.
void add_soft_skin(std::vector<Notice>& notices, const Design& design, const Worked& worked) {
    const double depth = design.surface.soft_skin_mm;
    const PeakStress peak = peak_stress(worked.action, worked.worst);
    if (depth <= 0.0 || peak.stress_mpa <= 0.0) return;
    const double thick = thickness_mm(design.spring.thickness, peak.station_mm);
    const double left = 1.0 - 2.0 * depth / thick;
    const double under = peak.stress_mpa * left;
    notices.push_back(
        {.code = NoticeCode::soft_skin,
         .parameters = {{"depth", depth, Quantity::length},
                        {"station", peak.station_mm, Quantity::length},
                        {"under", under, Quantity::stress},
                        {"yield_margin", design.strength.yield_mpa.value / under, Quantity::ratio},
                        {"strength_lost", 1.0 - left * left, Quantity::ratio},
                        {"stiffness_lost", 1.0 - left * left * left, Quantity::ratio},
                        {"fatigue_share", kSoftSkinShare, Quantity::ratio}}});
}

}  // namespace

std::vector<Notice> detail::surface_notices(const Design& design, const Worked& worked) {
    std::vector<Notice> notices;
    add_kinks(notices, design, worked);
    add_soft_skin(notices, design, worked);
    return notices;
}

}  // namespace backspring

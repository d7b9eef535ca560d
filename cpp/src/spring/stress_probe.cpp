#include <algorithm>
#include <cmath>
#include <optional>

#include "backspring/spring/bending.hpp"
#include "backspring/spring/stretches.hpp"

namespace backspring {
namespace {

constexpr int kPlacesAcrossHalfHole = 24;

double stress_per_moment(const Stretch& stretch, double width_mm, double x_mm) {
    const double chord = chord_mm(stretch.hole, x_mm);
    return outer_stress_per_moment(
        make_section(width_mm, thickness_mm(stretch, x_mm), chord, stretch.hole.offset_mm));
}

void add_places(const Stretch& stretch, double width_mm, std::vector<StressProbe::Place>& places) {
    const int parts = stretch.hole.diameter_mm > 0.0 ? kPlacesAcrossHalfHole : 1;
    for (int i = 0; i <= parts; ++i) {
        const double x =
            std::lerp(stretch.start_mm, stretch.end_mm, static_cast<double>(i) / parts);
        places.push_back({x, stress_per_moment(stretch, width_mm, x)});
    }
}

// Where 6 M/(b t^2) peaks on a straight taper whose moment vanishes in a straight line at zero_mm.
std::optional<Station> taper_peak(const Station& start, const Station& end, double zero_mm) {
    const double taper = (end.thickness_mm - start.thickness_mm) / (end.x_mm - start.x_mm);
    if (taper == 0.0) return std::nullopt;
    const double at_zero = start.thickness_mm + taper * (zero_mm - start.x_mm);
    const double x = zero_mm + at_zero / taper;
    if (!(x > start.x_mm && x < end.x_mm)) return std::nullopt;
    return Station{x, 2.0 * at_zero};
}

double rectangle_stress_per_moment(double width_mm, double thickness_mm) {
    return 6.0 / (width_mm * thickness_mm * thickness_mm);
}

StressProbe::Place worst_behind(const Spring& spring) {
    StressProbe::Place worst{0.0, 0.0};
    if (spring.support.kind != SupportKind::two_pins) return worst;
    const double span = spring.support.rear_pin_mm;
    const auto consider = [&](double x, double per_moment) {
        const double stress = (1.0 + x / span) * per_moment;
        if (stress > worst.stress_per_moment) worst = {x, stress};
    };
    for (const Stretch& stretch : cut_into_stretches(spring, -span, 0.0)) {
        std::vector<StressProbe::Place> places;
        add_places(stretch, spring.width_mm, places);
        for (const auto& place : places) consider(place.x_mm, place.stress_per_moment);
        if (stretch.hole.diameter_mm > 0.0) continue;
        const Station start{stretch.start_mm, stretch.thickness_mm};
        const Station end{stretch.end_mm, thickness_mm(stretch, stretch.end_mm)};
        if (const auto peak = taper_peak(start, end, -span)) {
            consider(peak->x_mm, rectangle_stress_per_moment(spring.width_mm, peak->thickness_mm));
        }
    }
    return worst;
}

double moment_ahead(std::span<const Load> loads, double x_mm) {
    double moment = 0.0;
    for (const Load& load : loads) moment += load.force_n * std::max(load.x_mm - x_mm, 0.0);
    return moment;
}

}  // namespace

StressProbe make_stress_probe(const Spring& spring) {
    const double last = last_change_mm(spring);
    StressProbe probe = stress_probe_between(spring, 0.0, last);
    // From there on the moment falls over one thickness: nothing ahead is worse.
    probe.ahead.push_back(
        {last, rectangle_stress_per_moment(spring.width_mm, thickness_mm(spring.thickness, last))});
    probe.behind = worst_behind(spring);
    return probe;
}

StressProbe stress_probe_between(const Spring& spring, double from_mm, double to_mm) {
    StressProbe probe;
    probe.width_mm = spring.width_mm;
    for (const Stretch& stretch : cut_into_stretches(spring, from_mm, to_mm)) {
        add_places(stretch, spring.width_mm, probe.ahead);
        if (stretch.hole.diameter_mm > 0.0) continue;
        probe.taper.push_back({stretch.start_mm, stretch.thickness_mm});
        probe.taper.push_back({stretch.end_mm, thickness_mm(stretch, stretch.end_mm)});
    }
    return probe;
}

PeakStress peak_stress(const StressProbe& probe, std::span<const Load> loads) {
    PeakStress worst{.stress_mpa = moment_ahead(loads, 0.0) * probe.behind.stress_per_moment,
                     .station_mm = probe.behind.x_mm};
    const auto consider = [&](double x, double stress) {
        if (stress > worst.stress_mpa) worst = {stress, x};
    };
    for (const auto& place : probe.ahead) {
        consider(place.x_mm, moment_ahead(loads, place.x_mm) * place.stress_per_moment);
    }
    // Between two loads the moment vanishes at the front one, behind both at their resultant.
    double force = 0.0, moment = 0.0;
    for (std::size_t k = loads.size(); k-- > 0;) {
        force += loads[k].force_n;
        moment += loads[k].force_n * loads[k].x_mm;
        if (force <= 0.0) continue;
        for (std::size_t i = 0; i + 1 < probe.taper.size(); i += 2) {
            const auto peak = taper_peak(probe.taper[i], probe.taper[i + 1], moment / force);
            if (!peak) continue;
            consider(peak->x_mm,
                     moment_ahead(loads, peak->x_mm) *
                         rectangle_stress_per_moment(probe.width_mm, peak->thickness_mm));
        }
    }
    return worst;
}

}  // namespace backspring

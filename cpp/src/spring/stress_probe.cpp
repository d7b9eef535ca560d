#include <algorithm>
#include <cmath>

#include "backspring/spring/bending.hpp"
#include "backspring/spring/stretches.hpp"
#include "net_sections.hpp"
#include "taper_peak.hpp"

namespace backspring {
namespace {

constexpr int kPlacesAcrossHalfHole = 24;

using Taper = StressProbe::Taper;

StressProbe::Place place_in(const Stretch& stretch, double width_mm, double x_mm) {
    const Section section = unit_section(stretch, x_mm);
    const double width = width_mm * width_share(stretch, x_mm);
    return {x_mm, outer_stress_per_moment(section) / width, 1.0 / (section.area_mm2 * width)};
}

void add_across_hole(const Stretch& stretch,
                     double width_mm,
                     std::vector<StressProbe::Place>& places) {
    constexpr int count = kPlacesAcrossHalfHole + 1;
    using Row = Eigen::Array<double, count, 1>;
    static const Row shares = Row::LinSpaced(count, 0.0, 1.0);
    const Hole& hole = stretch.hole;
    const double radius = 0.5 * hole.diameter_mm;
    const Row s = (stretch.end_mm - stretch.start_mm) * shares;
    const Row away = s + (stretch.start_mm - hole.center_mm);
    const Row chord = 2.0 * ((radius - away) * (radius + away)).max(0.0).sqrt();
    const NetSections<count> net(stretch, s, chord);
    const Row width = width_mm * (stretch.width_share + stretch.width_taper * s);
    const Row per_moment = (0.5 * net.thickness_mm + net.off_line_mm) / (net.inertia_mm3 * width);
    const Row per_push = 1.0 / (net.steel_mm * width);
    places.reserve(places.size() + 2 * count);
    for (int i = 0; i < count; ++i) {
        const double x = i + 1 < count ? stretch.start_mm + s[i] : stretch.end_mm;
        places.push_back({x, per_moment[i], per_push[i]});
    }
}

void add_places(const Stretch& stretch, double width_mm, std::vector<StressProbe::Place>& places) {
    if (stretch.hole.diameter_mm > 0.0) return add_across_hole(stretch, width_mm, places);
    places.push_back(place_in(stretch, width_mm, stretch.start_mm));
    places.push_back(place_in(stretch, width_mm, stretch.end_mm));
}

StressProbe::Place worst_behind(const Spring& spring) {
    StressProbe::Place worst{0.0, 0.0};
    if (spring.support.kind != SupportKind::two_pins) return worst;
    const double span = spring.support.rear_pin_mm;
    const auto consider = [&](double x, double per_moment) {
        const double stress = (1.0 + x / span) * per_moment;
        if (stress > worst.stress_per_moment) worst = {x, stress};
    };
    std::vector<StressProbe::Place> places;
    for (const Stretch& stretch : cut_into_stretches(spring, -span, 0.0)) {
        places.clear();
        add_places(stretch, spring.width_mm, places);
        for (const auto& place : places) consider(place.x_mm, place.stress_per_moment);
        if (stretch.hole.diameter_mm > 0.0) continue;
        if (const auto peak = taper_peak(taper_of(stretch, spring.width_mm), -span)) {
            consider(peak->x_mm, peak->stress_per_moment);
        }
    }
    return worst;
}

/// Places and tapers of a part of a spring.
void add_stretches(const Spring& spring,
                   double from_mm,
                   double to_mm,
                   std::vector<StressProbe::Place>& places,
                   std::vector<Taper>& taper) {
    for (const Stretch& stretch : cut_into_stretches(spring, from_mm, to_mm)) {
        add_places(stretch, spring.width_mm, places);
        if (stretch.hole.diameter_mm > 0.0) continue;
        taper.push_back(taper_of(stretch, spring.width_mm));
    }
}

void add_overhang(const Spring& spring,
                  std::vector<StressProbe::Place>& places,
                  std::vector<Taper>& taper) {
    const double last = last_change_mm(spring);
    add_stretches(spring, 0.0, last, places, taper);
    // From there on the moment falls over one thickness: nothing ahead is worse.
    const Section section = section_at(spring, last);
    places.push_back({last, outer_stress_per_moment(section), 1.0 / section.area_mm2});
}

/// Those that bear more stress per moment than any before them: moments of a blade's forces fall
/// along the spring, so that no other is the worst.
std::vector<StressProbe::Place> rising(std::span<const StressProbe::Place> places) {
    std::vector<StressProbe::Place> found;
    for (const auto& place : places) {
        if (found.empty() || place.stress_per_moment > found.back().stress_per_moment) {
            found.push_back(place);
        }
    }
    return found;
}

double moment_ahead(std::span<const Load> loads, double x_mm) {
    double moment = 0.0;
    for (const Load& load : loads) moment += load.force_n * std::max(load.x_mm - x_mm, 0.0);
    return moment;
}

void consider(PeakStress& worst, double x_mm, double stress_mpa) {
    if (stress_mpa > worst.stress_mpa) worst = {stress_mpa, x_mm};
}

void consider_overhang(PeakStress& worst,
                       std::span<const Load> loads,
                       std::span<const StressProbe::Place> places,
                       std::span<const Taper> tapers) {
    // No moment is greater than the one at the pin.
    const double root = moment_ahead(loads, 0.0);
    for (const auto& place : places) {
        if (root * place.stress_per_moment <= worst.stress_mpa) continue;
        consider(worst, place.x_mm, moment_ahead(loads, place.x_mm) * place.stress_per_moment);
    }
    // Between two loads the moment vanishes at the front one, behind both at their resultant.
    double force = 0.0, moment = 0.0;
    for (std::size_t k = loads.size(); k-- > 0;) {
        force += loads[k].force_n;
        moment += loads[k].force_n * loads[k].x_mm;
        if (force <= 0.0) continue;
        for (const Taper& taper : tapers) {
            const auto peak = taper_peak(taper, moment / force);
            if (!peak) continue;
            consider(worst, peak->x_mm, moment_ahead(loads, peak->x_mm) * peak->stress_per_moment);
        }
    }
}

/// Between two pins, where the moment runs in a straight line from one to the other.
void consider_between(PeakStress& worst,
                      const StressProbe::OtherEnd& other,
                      double here_nmm,
                      double there_nmm) {
    const auto moment = [&](double x) {
        return std::lerp(here_nmm, there_nmm, -x / other.span_mm);
    };
    for (const auto& place : other.between) {
        consider(worst, place.x_mm, moment(place.x_mm) * place.stress_per_moment);
    }
    if (here_nmm == there_nmm) return;
    const double zero_mm = other.span_mm * here_nmm / (there_nmm - here_nmm);
    for (const Taper& taper : other.between_taper) {
        const auto peak = taper_peak(taper, zero_mm);
        if (!peak) continue;
        consider(worst, peak->x_mm, moment(peak->x_mm) * peak->stress_per_moment);
    }
}

}  // namespace

StressProbe make_stress_probe(const Spring& spring) {
    StressProbe probe;
    add_overhang(spring, probe.ahead, probe.taper);
    probe.rising = rising(probe.ahead);
    probe.behind = worst_behind(spring);
    return probe;
}

StressProbe with_other_end(StressProbe probe, const Spring& spring) {
    const bool pinned = spring.support.kind == SupportKind::two_pins;
    probe.other_end = StressProbe::OtherEnd{};
    StressProbe::OtherEnd& other = *probe.other_end;
    other.span_mm = pinned ? spring.support.rear_pin_mm : 0.0;
    if (pinned) {
        add_stretches(spring, -other.span_mm, 0.0, other.between, other.between_taper);
    }
    add_overhang(turned_round(spring), other.beyond, other.beyond_taper);
    return probe;
}

PeakStress peak_stress(const StressProbe& probe, std::span<const Load> loads) {
    const auto ahead = std::ranges::find_if(loads, [](const Load& l) { return l.x_mm > 0.0; });
    const std::span<const Load> near(ahead, loads.end());
    PeakStress worst{.stress_mpa = moment_ahead(near, 0.0) * probe.behind.stress_per_moment,
                     .station_mm = probe.behind.x_mm};
    if (probe.other_end) worst = {0.0, 0.0};
    consider_overhang(worst, near, probe.rising.empty() ? probe.ahead : probe.rising, probe.taper);
    if (!probe.other_end) return worst;
    const StressProbe::OtherEnd& other = *probe.other_end;
    std::vector<Load> far;
    for (auto load = std::make_reverse_iterator(ahead); load != loads.rend(); ++load) {
        far.push_back({-other.span_mm - load->x_mm, load->force_n});
    }
    PeakStress beyond;
    consider_overhang(beyond, far, other.beyond, other.beyond_taper);
    beyond.station_mm = -other.span_mm - beyond.station_mm;
    if (beyond.stress_mpa > worst.stress_mpa) worst = beyond;
    const double here = moment_ahead(near, 0.0), there = moment_ahead(far, 0.0);
    consider_between(worst, other, here, there);
    return worst;
}

}  // namespace backspring

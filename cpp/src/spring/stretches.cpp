#include "backspring/spring/stretches.hpp"

#include <algorithm>
#include <cmath>

namespace backspring {
namespace {

// Quadrature is exact to rounding where the width at one end is at most so much of the other's.
constexpr double kMostSpread = 2.0;

/// Cuts a stretch that narrows by more, so that each part narrows by no more.
template <class Add>
void add_in_wedges(const WidthProfile& widths, Add add) {
    for (std::size_t i = 1; i < widths.size(); ++i) {
        const WidthStation &a = widths[i - 1], &b = widths[i];
        const double spread = std::abs(std::log(b.width_mm / a.width_mm) / std::log(kMostSpread));
        const int parts = static_cast<int>(std::ceil(spread));
        for (int k = 1; k < parts; ++k) {
            const double width = a.width_mm * std::pow(b.width_mm / a.width_mm, 1.0 * k / parts);
            add(a.x_mm + (b.x_mm - a.x_mm) * (width - a.width_mm) / (b.width_mm - a.width_mm));
        }
    }
}

std::vector<double> cuts(const Spring& spring, double from_mm, double to_mm) {
    std::vector<double> places;
    places.reserve(2 + spring.thickness.size() + spring.widths.size() + spring.mid_line.size() +
                   3 * spring.holes.size());
    places.assign({from_mm, to_mm});
    const auto add = [&](double x) {
        if (x > from_mm && x < to_mm) places.push_back(x);
    };
    for (const Station& station : spring.thickness) add(station.x_mm);
    for (const WidthStation& station : spring.widths) add(station.x_mm);
    for (const MidLinePoint& point : spring.mid_line) add(point.x_mm);
    for (const Hole& hole : spring.holes) {
        if (hole.diameter_mm <= 0.0) continue;
        add(hole.center_mm - 0.5 * hole.diameter_mm);
        add(hole.center_mm);
        add(hole.center_mm + 0.5 * hole.diameter_mm);
    }
    add_in_wedges(spring.widths, add);
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end()), places.end());
    return places;
}

Hole hole_through(const Spring& spring, double x_mm) {
    for (const Hole& hole : spring.holes) {
        if (chord_mm(hole, x_mm) > 0.0) return hole;
    }
    return {};
}

void shape_width(Stretch& stretch, const Spring& spring, double middle_mm) {
    if (spring.widths.empty()) return;
    const double start = width_at_mm(spring, stretch.start_mm) / spring.width_mm;
    const double middle = width_at_mm(spring, middle_mm) / spring.width_mm;
    stretch.width_share = start;
    stretch.width_taper = (middle - start) / (middle_mm - stretch.start_mm);
}

void lean(Stretch& stretch, const Spring& spring, double middle_mm) {
    const double tangent = slope(spring.mid_line, middle_mm);
    if (tangent == 0.0) return;
    const Elastic& steel = spring.elastic;
    stretch.cosine = lean_cosine(spring, middle_mm);
    stretch.axial_share =
        kShearFactor * shear_modulus_mpa(steel) / steel.youngs_modulus_mpa * tangent * tangent;
}

}  // namespace

std::vector<Stretch> cut_into_stretches(const Spring& spring, double from_mm, double to_mm) {
    const std::vector<double> places = cuts(spring, from_mm, to_mm);
    std::vector<Stretch> stretches;
    stretches.reserve(places.size());
    for (std::size_t i = 0; i + 1 < places.size(); ++i) {
        const double start = places[i], end = places[i + 1], middle = 0.5 * (start + end);
        // Stations next to each other to the last bit are a step: no number lies between.
        if (!(start < middle && middle < end)) continue;
        // Two points inside give the straight line, whatever steps lie at its ends.
        const double t_start = thickness_mm(spring.thickness, start);
        const double t_middle = thickness_mm(spring.thickness, middle);
        stretches.push_back({.start_mm = start,
                             .end_mm = end,
                             .thickness_mm = t_start,
                             .taper = (t_middle - t_start) / (middle - start),
                             .hole = hole_through(spring, middle),
                             .upto = {}});
        shape_width(stretches.back(), spring, middle);
        lean(stretches.back(), spring, middle);
    }
    return stretches;
}

Section unit_section(const Stretch& stretch, double x_mm) {
    return make_section(1.0, thickness_mm(stretch, x_mm) * stretch.cosine,
                        chord_mm(stretch.hole, x_mm), stretch.hole.offset_mm);
}

UnitRates unit_rates(const Stretch& stretch, double x_mm) {
    const Section net = unit_section(stretch, x_mm);
    return {.bending = 1.0 / (net.inertia_mm4 * width_share(stretch, x_mm) * stretch.cosine),
            .shear = 1.0 / shear_depth_mm(stretch, x_mm)};
}

}  // namespace backspring

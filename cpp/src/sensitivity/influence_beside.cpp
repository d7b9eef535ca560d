#include "influence_beside.hpp"

#include <algorithm>

#include "../grind/grind_removal.hpp"
#include "worst_figures.hpp"

namespace backspring {
namespace {

// Small against the thickness, large against the rounding of a solution.
constexpr double kHairMm = 1e-4;

/// Area of a peak within a hole, by trapezoids between all places where it bends.
double area_mm2(const Profile& peak, const Hole& hole) {
    const double rear = hole.center_mm - 0.5 * hole.diameter_mm;
    const double front = hole.center_mm + 0.5 * hole.diameter_mm;
    double area = 0.0;
    for (std::size_t i = 1; i < peak.size(); ++i) {
        const double from = std::max(rear, peak[i - 1].x_mm), to = std::min(front, peak[i].x_mm);
        if (from < to)
            area += 0.5 * (to - from) * (thickness_mm(peak, from) + thickness_mm(peak, to));
    }
    return area;
}

/// A depth off the steel, or onto it, spread as a peak says.
///
/// A hole's offset changes by the mean depth over it, so that all peaks together move it right.
Design thinned_about(const Design& design, GrindFace face, Profile peak, double depth_mm) {
    Design thinner = design;
    const double side = face == GrindFace::back ? 0.5 : -0.5;
    for (Hole& hole : thinner.spring.holes) {
        hole.offset_mm += side * depth_mm * area_mm2(peak, hole) / hole.diameter_mm;
    }
    for (Station& station : peak) station.thickness_mm *= depth_mm;
    thinner.spring.thickness = thinned(design, peak);
    return thinner;
}

/// Where the two sides differ, that of steel taken off: none can be put on.
Eigen::ArrayXd thinned_rates(const ColumnSides& sides, const WorstFigures& figures) {
    const Eigen::ArrayXd joined = sides.joined(figures.values(), kHairMm);
    return joined.isNaN().select(sides.above, joined);
}

}  // namespace

Influence detail::influence_beside(const Design& design, GrindFace face, const Stations& stations) {
    const WorstFigures figures(design);
    Influence result{.station_mm = {},
                     .figures = figures.names(),
                     .value = figures.values(),
                     .change_per_pass = Eigen::ArrayXXd(figures.values().size(), stations.count())};
    for (Eigen::Index i = 0; i < stations.count(); ++i) {
        const auto thinner = [&](double depth_mm) {
            return thinned_about(design, face, stations.peak(i), depth_mm);
        };
        result.change_per_pass.col(i) = thinned_rates(figures.sides(thinner, kHairMm), figures);
    }
    return result;
}

void detail::replace_at_corners(Influence& result,
                                const std::vector<std::string>& corners,
                                const Design& design,
                                GrindFace face,
                                const Stations& stations) {
    if (corners.empty()) return;
    const Influence differences = influence_beside(design, face, stations);
    for (const std::string& name : corners) {
        const auto row = std::ranges::find(result.figures, name) - result.figures.begin();
        result.change_per_pass.row(row) = differences.of(name).transpose();
    }
}

}  // namespace backspring

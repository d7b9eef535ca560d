#include "backspring/check/closed_blade.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "backspring/core/angle.hpp"
#include "backspring/core/root.hpp"

namespace backspring {
namespace {

// The bent belly turns by less than 0.001 rad over so much, so one place a step is the least.
constexpr double kLookMm = 0.25;

/// A place of the handle: station from the middle pin, height above the pivot.
struct HandlePlace {
    double x_mm;
    double y_mm;
};

HandlePlace turned(const Design& design, const BladePoint& point, double blade_angle_deg) {
    const double angle = radians(blade_angle_deg);
    return {
        design.own().tang.pivot_mm - point.u_mm * std::cos(angle) + point.w_mm * std::sin(angle),
        -point.u_mm * std::sin(angle) - point.w_mm * std::cos(angle)};
}

double belly_line_mm(const Joint& joint, double x_mm) {
    return joint.face_mm + joint.face_slope * x_mm;
}

/// Stations that the spring covers.
struct Covered {
    double from_mm;
    double to_mm;
};

Covered covered(const Spring& spring, double end_mm) {
    const bool pinned = spring.support.kind == SupportKind::two_pins;
    const double first = spring.thickness.size() > 1 ? spring.thickness.front().x_mm : 0.0;
    return {std::min(first, pinned ? -spring.support.rear_pin_mm : 0.0), end_mm};
}

double belly_mm(const Joint& joint, const Contact& closed, double x_mm) {
    const double bent = x_mm < 0.0 ? 0.0 : deflection_mm(joint, closed, x_mm);
    return belly_line_mm(joint, x_mm) + bent;
}

double edge_mm(const HandlePlace& a, const HandlePlace& b, double x_mm) {
    return a.y_mm + (b.y_mm - a.y_mm) * (x_mm - a.x_mm) / (b.x_mm - a.x_mm);
}

/// The least gap along one straight part of the edge, kept in `least` where it is less.
class EdgeGap {
  public:
    EdgeGap(const Design& design, const Joint& joint, const Contact& closed)
        : design_(design),
          joint_(joint),
          closed_(closed),
          covered_(covered(design.spring, design.own().pad.end_mm)) {}

    void look_along(const HandlePlace& a, const HandlePlace& b) {
        const double from = std::max(std::min(a.x_mm, b.x_mm), covered_.from_mm);
        const double to = std::min(std::max(a.x_mm, b.x_mm), covered_.to_mm);
        if (!(from < to)) return;
        const auto gap = [&](double x) {
            const double curved = belly_mm(design_.spring, design_.own().pad, x);
            return curved + belly_mm(joint_, closed_, x) - edge_mm(a, b, x);
        };
        const int parts = std::max(1, static_cast<int>(std::ceil((to - from) / kLookMm)));
        double best = from;
        for (int i = 0; i <= parts; ++i) {
            const double x = from + (to - from) * i / parts;
            if (gap(x) < gap(best)) best = x;
        }
        const double step = (to - from) / parts;
        const double near = find_maximum([&](double x) { return -gap(x); },
                                         std::max(from, best - step), std::min(to, best + step));
        for (const double x : {best, near}) keep(gap(x), x);
    }

    [[nodiscard]] bool known() const { return std::isfinite(least_mm_); }
    [[nodiscard]] double least_mm() const { return least_mm_; }
    [[nodiscard]] double at_mm() const { return at_mm_; }

  private:
    void keep(double gap_mm, double x_mm) {
        if (gap_mm >= least_mm_) return;
        least_mm_ = gap_mm;
        at_mm_ = x_mm;
    }

    const Design& design_;
    const Joint& joint_;
    const Contact& closed_;
    Covered covered_;
    double least_mm_ = std::numeric_limits<double>::infinity();
    double at_mm_ = 0.0;
};

}  // namespace

std::optional<BladePoint> blade_tip(const Design& design) {
    const BladeBody& blade = design.own().blade;
    if (blade.tip) return blade.tip;
    if (!blade.edge.empty()) {
        return *std::max_element(
            blade.edge.begin(), blade.edge.end(),
            [](const BladePoint& a, const BladePoint& b) { return a.u_mm < b.u_mm; });
    }
    if (!blade.length_mm) return std::nullopt;
    return BladePoint{*blade.length_mm - rear_reach_mm(design.own().tang), 0.0};
}

double height_in_handle_mm(const BladePoint& point, double blade_angle_deg) {
    const double angle = radians(blade_angle_deg);
    const double half = std::sin(0.5 * angle);
    return point.u_mm * std::sin(angle) - 2.0 * point.w_mm * half * half;
}

ClosedBlade closed_blade(const Design& design, const Joint& joint, const Contact& closed) {
    ClosedBlade found;
    const double angle = closed.blade_angle_deg;
    const auto tip = blade_tip(design);
    if (tip && design.own().blade.well_mm) {
        const HandlePlace place = turned(design, *tip, angle);
        found.tip_mm = belly_line_mm(joint, place.x_mm) - place.y_mm - *design.own().blade.well_mm;
    }
    EdgeGap gap(design, joint, closed);
    for (std::size_t i = 0; i + 1 < design.own().blade.edge.size(); ++i) {
        gap.look_along(turned(design, design.own().blade.edge[i], angle),
                       turned(design, design.own().blade.edge[i + 1], angle));
    }
    if (gap.known()) {
        found.edge_gap_mm = gap.least_mm();
        found.edge_gap_at_mm = gap.at_mm();
    }
    return found;
}

std::optional<double> edge_gap_mm(const Design& design,
                                  const Joint& joint,
                                  const Contact& closed,
                                  double station_mm) {
    const Covered along = covered(design.spring, design.own().pad.end_mm);
    if (station_mm < along.from_mm || station_mm > along.to_mm) return std::nullopt;
    std::optional<double> least;
    const auto& edge = design.own().blade.edge;
    for (std::size_t i = 0; i + 1 < edge.size(); ++i) {
        const HandlePlace a = turned(design, edge[i], closed.blade_angle_deg);
        const HandlePlace b = turned(design, edge[i + 1], closed.blade_angle_deg);
        if ((a.x_mm - station_mm) * (b.x_mm - station_mm) > 0.0 || a.x_mm == b.x_mm) continue;
        const double gap = belly_mm(joint, closed, station_mm) - edge_mm(a, b, station_mm);
        least = std::min(gap, least.value_or(gap));
    }
    return least;
}

}  // namespace backspring

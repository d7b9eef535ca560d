#include "backspring/tang/drawn_outline.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "backspring/core/angle.hpp"
#include "ground_face.hpp"

namespace backspring {
namespace {

constexpr double kSmoothRad = 1e-6;   // corners that turn less are rounding of a smooth passage
constexpr double kStraight = 1e-12;   // bulges below this make no arc
constexpr double kLeastSideMm = 0.5;  // less is a facet of a curve
constexpr double kFlatter = 2.0;      // radius over distance of an arc that holds the blade
constexpr double kNearFaceRad = 15.0 * kPi / 180.0;

/// A line or an arc of the outline, with the normals at both ends, each next to the one before.
struct Way {
    Arc arc;
    bool straight;
};

Way way_between(const OutlinePoint& from, const OutlinePoint& to, double after_rad) {
    const double u = to.u_mm - from.u_mm, w = to.w_mm - from.w_mm;
    const double chord = std::hypot(u, w), half_turn = 2.0 * std::atan(from.bulge);
    const double begin = std::atan2(w, u) - half_turn - 0.5 * kPi;
    const double next = after_rad + std::remainder(begin - after_rad, 2.0 * kPi);
    Arc arc{from.u_mm, from.w_mm, 0.0, next, next + 2.0 * half_turn};
    if (std::abs(from.bulge) < kStraight) return {arc, true};
    const double aside = (1.0 - from.bulge * from.bulge) / (4.0 * from.bulge);
    arc.u_mm = 0.5 * (from.u_mm + to.u_mm) - aside * w;
    arc.w_mm = 0.5 * (from.w_mm + to.w_mm) + aside * u;
    arc.radius_mm = chord * (1.0 + from.bulge * from.bulge) / (4.0 * from.bulge);
    return {arc, false};
}

std::vector<Way> ways_of(std::span<const OutlinePoint> outline) {
    std::vector<Way> ways;
    double after = 0.0;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        ways.push_back(way_between(outline[i], outline[(i + 1) % outline.size()], after));
        after = ways.back().arc.to_rad;
    }
    return ways;
}

/// A smooth passage lies where its flat ends, for a flat keeps its direction.
///
/// @param whole_rad  turn from the last way to the first
void make_smooth(Way& before, Way& after, double whole_rad) {
    const double turn = after.arc.from_rad + whole_rad - before.arc.to_rad;
    if (std::abs(turn) >= kSmoothRad) return;
    if (before.straight) {
        after.arc.from_rad = before.arc.to_rad - whole_rad;
    } else {
        before.arc.to_rad = after.arc.from_rad + whole_rad;
    }
}

bool turns_once(const std::vector<Way>& ways) {
    double turned = ways.back().arc.to_rad - ways.front().arc.from_rad;
    const double last = std::remainder(ways.front().arc.from_rad - ways.back().arc.to_rad, 2 * kPi);
    turned += last;
    return last > -kSmoothRad && std::abs(turned - 2.0 * kPi) < 0.1;
}

/// The normal of an arc that points from its centre through the pivot, from the arc's first on.
double facing_pivot(const Arc& arc) {
    const double normal = std::atan2(-arc.w_mm, -arc.u_mm);
    return normal + 2.0 * kPi * std::ceil((arc.from_rad - normal) / (2.0 * kPi));
}

double least_reach_mm(std::span<const Arc> arcs) {
    double least = std::numeric_limits<double>::infinity();
    for (const Arc& arc : arcs) {
        for (const double each : {arc.from_rad, std::min(facing_pivot(arc), arc.to_rad)}) {
            const Direction2 out(each);
            least = std::min(least, out.reach_mm(arc.u_mm, arc.w_mm) + arc.radius_mm);
        }
    }
    return least;
}

}  // namespace

OutlineFlaw flaw_of(std::span<const OutlinePoint> outline) {
    if (outline.size() < 3) return OutlineFlaw::too_few;
    const std::vector<Way> ways = ways_of(outline);
    for (std::size_t i = 0; i < ways.size(); ++i) {
        const Arc& arc = ways[i].arc;
        const bool follows = i == 0 || arc.from_rad - ways[i - 1].arc.to_rad > -kSmoothRad;
        if (outline[i].bulge < 0.0 || !follows) return OutlineFlaw::not_convex;
    }
    if (!turns_once(ways)) return OutlineFlaw::not_convex;
    return least_reach_mm(arcs_of(outline)) > 0.0 ? OutlineFlaw::none : OutlineFlaw::pivot_outside;
}

std::vector<Arc> arcs_of(std::span<const OutlinePoint> outline) {
    std::vector<Way> ways = ways_of(outline);
    for (std::size_t i = 1; i < ways.size(); ++i) make_smooth(ways[i - 1], ways[i], 0.0);
    make_smooth(ways.back(), ways.front(), 2.0 * kPi);
    std::vector<Arc> arcs;
    double after = ways.back().arc.to_rad - 2.0 * kPi;
    for (std::size_t i = 0; i < ways.size(); ++i) {
        const Arc& arc = ways[i].arc;
        if (arc.from_rad - after >= kSmoothRad) {
            arcs.push_back({outline[i].u_mm, outline[i].w_mm, 0.0, after, arc.from_rad});
        }
        if (!ways[i].straight) arcs.push_back(arc);
        after = arc.to_rad;
    }
    return started_at(arcs, 0.0);
}

double reach_mm(std::span<const Arc> arcs, double normal_rad) {
    const Direction2 out(normal_rad);
    double farthest = -std::numeric_limits<double>::infinity();
    for (const Arc& arc : arcs) {
        for (const double each : {arc.from_rad, std::clamp(normal_rad, arc.from_rad, arc.to_rad)}) {
            const Arc place = edge_on(arc, each);
            farthest = std::max(farthest, out.reach_mm(place.u_mm, place.w_mm));
        }
    }
    return farthest;
}

std::vector<RestingSide> sides_of(std::span<const Arc> arcs) {
    std::vector<RestingSide> sides;
    const auto add = [&](double normal, double distance, double length) {
        if (length < kLeastSideMm) return;
        sides.push_back({normal, distance, length, degrees(1.5 * kPi - normal)});
    };
    for (std::size_t i = 0; i < arcs.size(); ++i) {
        const Arc& arc = arcs[i];
        const double away = std::hypot(arc.u_mm, arc.w_mm);
        if (arc.radius_mm >= kFlatter * (arc.radius_mm - away)) {
            const double normal = facing_pivot(arc);
            const double length = arc.radius_mm * (arc.to_rad - arc.from_rad);
            if (normal <= arc.to_rad) add(normal, arc.radius_mm - away, length);
        }
        const Arc& next = arcs[(i + 1) % arcs.size()];
        const Arc begin = edge_on(arc, arc.to_rad), end = edge_on(next, next.from_rad);
        add(arc.to_rad, Direction2(arc.to_rad).reach_mm(begin.u_mm, begin.w_mm),
            std::hypot(end.u_mm - begin.u_mm, end.w_mm - begin.w_mm));
    }
    return sides;
}

DrawnFaces faces_of(std::span<const Arc> arcs) {
    DrawnFaces faces{.open_mm = reach_mm(arcs, 0.5 * kPi),
                     .half_stop_mm = {},
                     .closed_mm = reach_mm(arcs, 1.5 * kPi),
                     .end_rad = kPi,
                     .closed_rad = 1.5 * kPi,
                     .others = {}};
    const std::vector<RestingSide> sides = sides_of(arcs);
    const auto longest_near = [&](double normal_rad) {
        const RestingSide* found = nullptr;
        for (const RestingSide& side : sides) {
            const bool near = std::abs(side.normal_rad - normal_rad) < kNearFaceRad;
            if (near && (!found || side.length_mm > found->length_mm)) found = &side;
        }
        return found;
    };
    const RestingSide *half = longest_near(kPi), *closed = longest_near(1.5 * kPi);
    if (half) {
        faces.half_stop_mm = half->distance_mm;
        faces.end_rad = half->normal_rad;
    }
    if (closed) {
        faces.closed_mm = closed->distance_mm;
        faces.closed_rad = closed->normal_rad;
    }
    for (const RestingSide& side : sides) {
        const bool behind = side.normal_rad > 0.5 * kPi + kSmoothRad &&
                            side.normal_rad < faces.closed_rad - kSmoothRad;
        if (behind && &side != half) faces.others.push_back(side);
    }
    return faces;
}

Tang tang_with_outline(Tang tang, std::vector<OutlinePoint> outline) {
    const DrawnFaces faces = faces_of(arcs_of(outline));
    return {.pivot_mm = tang.pivot_mm,
            .open_mm = faces.open_mm,
            .half_stop_mm = faces.half_stop_mm,
            .closed_mm = faces.closed_mm,
            .round_end_mm = {},
            .kick = tang.kick,
            .pivot_clearance_mm = tang.pivot_clearance_mm,
            .outline = std::move(outline)};
}

}  // namespace backspring

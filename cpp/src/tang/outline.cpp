#include "backspring/tang/outline.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "backspring/tang/drawn_outline.hpp"
#include "ground_face.hpp"

namespace backspring {
namespace {

constexpr double kSquare = 1e-9;  // angles nearer than this are alike [rad]

Arc edge(double u_mm, double w_mm, double from_rad) {
    return {u_mm, w_mm, 0.0, from_rad, from_rad + 0.5 * kPi};
}

void add_square_end(std::vector<Arc>& body, const Tang& tang) {
    const double end = -*tang.half_stop_mm;
    const double r1 = tang.corner_open_mm, r2 = tang.corner_closed_mm;
    body.push_back({end + r1, tang.open_mm - r1, r1, 0.5 * kPi, kPi});
    body.push_back({end + r2, r2 - tang.closed_mm, r2, kPi, 1.5 * kPi});
}

void add_round_end(std::vector<Arc>& body, const Tang& tang) {
    const double rho = round_end_radius_mm(tang);
    const auto behind = [&](double face, double radius) {
        const double along = rho - radius, across = face - radius;
        return -std::sqrt(std::max((along - across) * (along + across), 0.0));
    };
    const double r1 = tang.corner_open_mm, r2 = tang.corner_closed_mm;
    const double u1 = behind(tang.open_mm, r1), w1 = tang.open_mm - r1;
    const double u2 = behind(tang.closed_mm, r2), w2 = r2 - tang.closed_mm;
    // Corner and end disc touch where both normals point away from the pivot through the corner's
    // centre.
    const double join1 = std::atan2(w1, u1), join2 = std::atan2(w2, u2) + 2.0 * kPi;
    body.push_back({u1, w1, r1, 0.5 * kPi, join1});
    body.push_back({0.0, 0.0, rho, join1, join2});
    body.push_back({u2, w2, r2, join2, 1.5 * kPi});
}

/// Where the front end of the closed face is the foremost place, the outline is broken off there:
/// the blade goes on ahead in line with that face.
void go_on_ahead(std::vector<Arc>& body, double closed_rad, double reach_mm) {
    const Arc last = body.back();
    if (last.radius_mm > 0.0 || last.from_rad > closed_rad + kSquare) return;
    // What is left of the line at which it is broken off.
    const auto is_break = [&](const Arc& arc) {
        return arc.w_mm < 0.0 && arc.radius_mm == 0.0 && std::abs(arc.u_mm - last.u_mm) < kSquare;
    };
    if (is_break(body.front())) body.erase(body.begin());
    body.front().from_rad = 0.0;
    const double ahead = std::max(reach_mm - body.back().u_mm, 0.0);
    body.back().u_mm += ahead;
    body.back().w_mm += ahead * std::tan(closed_rad - 1.5 * kPi);
}

Outline drawn_outline(const Tang& tang, double reach_mm) {
    const std::vector<Arc> drawn = arcs_of(tang.outline);
    const DrawnFaces faces = faces_of(drawn);
    Outline outline{.body = with_face(drawn, 0.5 * kPi, tang.open_mm),
                    .kick = {},
                    .end_rad = faces.end_rad,
                    .closed_rad = faces.closed_rad};
    if (tang.half_stop_mm) {
        outline.body = with_face(outline.body, faces.end_rad, *tang.half_stop_mm);
    }
    outline.body = started_at(with_face(outline.body, faces.closed_rad, tang.closed_mm), 0.0);
    go_on_ahead(outline.body, faces.closed_rad, reach_mm);
    return outline;
}

Outline usual_outline(const Tang& tang, double reach_mm) {
    constexpr std::size_t most_arcs = 5;
    Outline outline;
    outline.body.reserve(most_arcs);
    outline.body.push_back(edge(tang.front_mm, tang.open_mm, 0.0));
    if (tang.half_stop_mm) {
        add_square_end(outline.body, tang);
    } else {
        add_round_end(outline.body, tang);
    }
    outline.body.push_back(edge(reach_mm, -tang.closed_mm, 1.5 * kPi));
    return outline;
}

/// Farthest from the pivot that an arc is over some normals.
double farthest_mm(const Arc& arc, double from_rad, double to_rad) {
    const double center = std::hypot(arc.u_mm, arc.w_mm);
    if (arc.radius_mm == 0.0) return center;
    double outward = std::atan2(arc.w_mm, arc.u_mm);
    if (outward < from_rad) outward += 2.0 * kPi;
    if (outward <= to_rad) return center + arc.radius_mm;
    double farthest = 0.0;
    for (const double normal : {from_rad, to_rad}) {
        const Arc place = edge_on(arc, normal);
        farthest = std::max(farthest, std::hypot(place.u_mm, place.w_mm));
    }
    return farthest;
}

}  // namespace

Outline make_outline(const Tang& tang, double reach_mm) {
    Outline outline =
        tang.outline.empty() ? usual_outline(tang, reach_mm) : drawn_outline(tang, reach_mm);
    if (tang.kick) {
        const Kick& kick = *tang.kick;
        const double out = tang.closed_mm + kick.height_mm - kick.radius_mm;
        outline.kick = Arc{kick.distance_mm, -out, kick.radius_mm, 0.5 * kPi, 2.5 * kPi};
        // A drawn closed face may lean: the nose stands on the face, not on a level with it.
        const Direction2 face(outline.closed_rad);
        if (!tang.outline.empty()) outline.kick->w_mm = (out - face.u * kick.distance_mm) / face.w;
    }
    return outline;
}

double swept_radius_mm(const Outline& outline) {
    double farthest = 0.0;
    for (const Arc& arc : outline.body) {
        const double from = std::max(arc.from_rad, 0.5 * kPi);
        const double to = std::min(arc.to_rad, outline.closed_rad);
        // The front ends of both faces lie at the ends of this range.
        if (to < from || arc.to_rad <= 0.5 * kPi || arc.from_rad >= outline.closed_rad) continue;
        farthest = std::max(farthest, farthest_mm(arc, from, to));
    }
    if (const auto& kick = outline.kick) {
        farthest = std::max(farthest, std::hypot(kick->u_mm, kick->w_mm) + kick->radius_mm);
    }
    return farthest;
}

}  // namespace backspring

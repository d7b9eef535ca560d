#include "backspring/strength/bearing_pressure.hpp"

#include <cmath>
#include <limits>
#include <map>
#include <numbers>

namespace backspring {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

constexpr double kAlike = 1e-9;  // angles nearer than this are one [rad]

/// Which part of the tang an arc is, by where it lies between the faces.
Bearer name_of(const Outline& outline, const Arc& arc) {
    if (arc.to_rad < 0.5 * std::numbers::pi + kAlike) return Bearer::open_front;
    if (arc.from_rad > outline.closed_rad - kAlike) return Bearer::closed_front;
    if (arc.to_rad < outline.end_rad + kAlike) return Bearer::open_corner;
    return arc.from_rad > outline.end_rad - kAlike ? Bearer::closed_corner : Bearer::round_end;
}

/// How hard a touch presses: by its force, over the radius where there is one.
double hardness(double force_n, double radius_mm) {
    return std::isfinite(radius_mm) && radius_mm > 0.0 ? force_n / radius_mm : force_n;
}

/// Whether a touch is harder on its part than the hardest so far; an edge than any radius.
bool is_harder(double force_n, double radius_mm, const BearingPressure& so_far) {
    if ((radius_mm > 0.0) != (so_far.radius_mm > 0.0) && so_far.force_n > 0.0) {
        return radius_mm == 0.0;
    }
    return hardness(force_n, radius_mm) > hardness(so_far.force_n, so_far.radius_mm);
}

}  // namespace

Bearing bearing_of(const Joint& joint, const Touch& touch) {
    if (touch.x_mm == joint.pad.start_mm || touch.x_mm == joint.pad.end_mm) {
        return {Bearer::pad_edge, 0.0};
    }
    if (touch.part.kick) return {Bearer::kick, joint.outline.kick->radius_mm};
    if (touch.part.flat) return {Bearer::flat, kInfinity};
    const auto& body = joint.outline.body;
    const auto arc = static_cast<std::size_t>(touch.part.arc);
    return {name_of(joint.outline, body[arc]), body[arc].radius_mm};
}

std::vector<BearingPressure> bearing_pressures(const Turns& travel,
                                               double length_mm,
                                               double modulus_mpa) {
    std::map<Bearer, BearingPressure> worst;
    const Joint& joint = travel.action().joint;
    for (const Piece& piece : travel.pieces()) {
        // One part bears all along a piece.
        for (std::size_t i = 0; i < piece.front()->contact.all().size(); ++i) {
            const auto touch = [&](const Turn& turn) { return turn.contact.touches[i]; };
            const Bearing bearing = bearing_of(joint, touch(*piece.front()));
            BearingPressure& known = worst[bearing.bearer];
            const auto force = [&](const Turn& turn) { return touch(turn).force_n; };
            const Turn turn = largest(travel.action(), {&piece, 1}, force);
            if (!is_harder(force(turn), bearing.radius_mm, known)) continue;
            known = {.bearer = bearing.bearer,
                     .radius_mm = bearing.radius_mm,
                     .force_n = force(turn),
                     .blade_angle_deg = angle_of(&turn),
                     .station_mm = touch(turn).x_mm,
                     .line = std::nullopt};
        }
    }
    std::vector<BearingPressure> result;
    for (auto& [bearer, pressure] : worst) {
        const bool round = pressure.radius_mm > 0.0 && std::isfinite(pressure.radius_mm);
        if (round) {
            pressure.line =
                line_contact(pressure.force_n, length_mm, pressure.radius_mm, modulus_mpa);
        }
        if (pressure.force_n > 0.0) result.push_back(pressure);
    }
    return result;
}

}  // namespace backspring

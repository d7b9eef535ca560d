#include "backspring/strength/bearing_pressure.hpp"

#include <cmath>
#include <limits>
#include <map>
#include <numbers>
#include <set>

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

/// One part that bears all along a piece.
struct Along {
    const Piece* piece;
    std::size_t touch;
    Bearing bearing;

    [[nodiscard]] double force_n(const Turn& turn) const {
        return turn.contact.touches[touch].force_n;
    }

    /// Where it presses hardest.
    [[nodiscard]] BearingPressure hardest(const Action& action) const {
        const auto force = [this](const Turn& turn) { return force_n(turn); };
        const Turn turn = largest(action, {piece, 1}, force);
        return {.bearer = bearing.bearer,
                .radius_mm = bearing.radius_mm,
                .force_n = force(turn),
                .blade_angle_deg = angle_of(&turn),
                .station_mm = turn.contact.touches[touch].x_mm,
                .line = std::nullopt};
    }
};

std::vector<Along> all_along(const Turns& travel) {
    std::vector<Along> found;
    for (const Piece& piece : travel.pieces()) {
        const auto touches = piece.front()->contact.all();
        for (std::size_t i = 0; i < touches.size(); ++i) {
            found.push_back({&piece, i, bearing_of(travel.action().joint, touches[i])});
        }
    }
    return found;
}

bool is_round(double radius_mm) { return radius_mm > 0.0 && std::isfinite(radius_mm); }

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
    for (const Along& along : all_along(travel)) {
        BearingPressure& known = worst[along.bearing.bearer];
        const BearingPressure hardest = along.hardest(travel.action());
        if (is_harder(hardest.force_n, hardest.radius_mm, known)) known = hardest;
    }
    std::vector<BearingPressure> result;
    for (auto& [bearer, pressure] : worst) {
        if (is_round(pressure.radius_mm)) {
            pressure.line =
                line_contact(pressure.force_n, length_mm, pressure.radius_mm, modulus_mpa);
        }
        if (pressure.force_n > 0.0) result.push_back(pressure);
    }
    return result;
}

std::optional<BearingPressure> worst_bearing_pressure(const Turns& travel,
                                                      double length_mm,
                                                      double modulus_mpa) {
    // Between its turns a force is not so much more than at them.
    constexpr double nearly = 0.8;
    std::vector<Along> round;
    std::vector<double> hard;
    std::set<Bearer> sharp;
    for (const Along& along : all_along(travel)) {
        const double radius = along.bearing.radius_mm;
        double force = 0.0;
        for (const Turn* turn : *along.piece) force = std::max(force, along.force_n(*turn));
        if (force > 0.0 && radius == 0.0) sharp.insert(along.bearing.bearer);
        if (!(force > 0.0) || !is_round(radius)) continue;
        round.push_back(along);
        hard.push_back(force / radius);
    }
    const auto left_out = [&](const Along& along) { return sharp.contains(along.bearing.bearer); };
    double most = 0.0;
    for (std::size_t i = 0; i < round.size(); ++i) {
        if (!left_out(round[i])) most = std::max(most, hard[i]);
    }
    std::optional<BearingPressure> worst;
    for (std::size_t i = 0; i < round.size(); ++i) {
        if (left_out(round[i]) || hard[i] < nearly * most) continue;
        const BearingPressure hardest = round[i].hardest(travel.action());
        if (!worst || is_harder(hardest.force_n, hardest.radius_mm, *worst)) worst = hardest;
    }
    if (worst) {
        worst->line = line_contact(worst->force_n, length_mm, worst->radius_mm, modulus_mpa);
    }
    return worst;
}

}  // namespace backspring

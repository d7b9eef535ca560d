#include "backspring/strength/bearing_pressure.hpp"

#include <cmath>
#include <limits>
#include <map>
#include <numbers>

#include "backspring/core/angle.hpp"

namespace backspring {
namespace {

constexpr double kOnArcMm = 1e-7;
constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// A touch as seen from the blade, in its outline's own coordinates.
struct Place {
    double u_mm;
    double w_mm;
};

Place on_blade(const Joint& joint, const Contact& contact, const Touch& touch) {
    const double turn = radians(contact.blade_angle_deg) - std::numbers::pi;
    const double x = touch.x_mm - joint.pivot_mm, y = touch.height_mm;
    return {std::cos(turn) * x + std::sin(turn) * y, std::cos(turn) * y - std::sin(turn) * x};
}

bool lies_on(const Arc& arc, const Place& place) {
    const double u = place.u_mm - arc.u_mm, w = place.w_mm - arc.w_mm;
    if (std::abs(std::hypot(u, w) - arc.radius_mm) > kOnArcMm) return false;
    if (arc.radius_mm <= kOnArcMm) return true;
    const double slack = kOnArcMm / arc.radius_mm;
    const double past = std::fmod(std::atan2(w, u) - arc.from_rad + slack + 4.0 * std::numbers::pi,
                                  2.0 * std::numbers::pi);
    return past <= arc.to_rad - arc.from_rad + 2.0 * slack;
}

Bearer name_of(std::size_t arc, std::size_t count) {
    if (arc == 0) return Bearer::open_front;
    if (arc + 1 == count) return Bearer::closed_front;
    if (arc == 1) return Bearer::open_corner;
    return arc + 2 == count ? Bearer::closed_corner : Bearer::round_end;
}

}  // namespace

Bearing bearing_of(const Joint& joint, const Contact& contact, const Touch& touch) {
    if (touch.x_mm == joint.pad.start_mm || touch.x_mm == joint.pad.end_mm) {
        return {Bearer::pad_edge, 0.0};
    }
    const Place place = on_blade(joint, contact, touch);
    const auto& kick = joint.outline.kick;
    if (kick && lies_on(*kick, place)) return {Bearer::kick, kick->radius_mm};
    const auto& body = joint.outline.body;
    for (std::size_t i = 0; i < body.size(); ++i) {
        if (lies_on(body[i], place)) return {name_of(i, body.size()), body[i].radius_mm};
    }
    return {Bearer::flat, kInfinity};
}

std::vector<BearingPressure> bearing_pressures(const Joint& joint,
                                               std::span<const Step> steps,
                                               double length_mm,
                                               double modulus_mpa) {
    std::map<Bearer, BearingPressure> worst;
    for (const Step& step : steps) {
        const Contact& contact = step.turn.contact;
        for (const Touch& touch : contact.all()) {
            const Bearing bearing = bearing_of(joint, contact, touch);
            BearingPressure& known = worst[bearing.bearer];
            if (touch.force_n <= known.force_n) continue;
            known = {.bearer = bearing.bearer,
                     .radius_mm = bearing.radius_mm,
                     .force_n = touch.force_n,
                     .blade_angle_deg = contact.blade_angle_deg,
                     .station_mm = touch.x_mm,
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

#include "backspring/strength/bearing_pressure.hpp"

#include <cmath>
#include <limits>
#include <map>

namespace backspring {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

Bearer name_of(std::size_t arc, std::size_t count) {
    if (arc == 0) return Bearer::open_front;
    if (arc + 1 == count) return Bearer::closed_front;
    if (arc == 1) return Bearer::open_corner;
    return arc + 2 == count ? Bearer::closed_corner : Bearer::round_end;
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
    return {name_of(arc, body.size()), body[arc].radius_mm};
}

std::vector<BearingPressure> bearing_pressures(const Joint& joint,
                                               std::span<const Step> steps,
                                               double length_mm,
                                               double modulus_mpa) {
    std::map<Bearer, BearingPressure> worst;
    for (const Step& step : steps) {
        const Contact& contact = step.turn.contact;
        for (const Touch& touch : contact.all()) {
            const Bearing bearing = bearing_of(joint, touch);
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

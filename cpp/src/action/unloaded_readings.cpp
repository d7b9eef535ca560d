#include "backspring/action/unloaded_readings.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "backspring/action/end_stop.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/tang/envelope.hpp"

namespace backspring {
namespace {

// Wider than rounding, narrower than anything a face could do.
constexpr double kBesideDeg = 1e-3;
constexpr double kSameSlope = 1e-9;
// rest_near() looks one degree on either side before it walks on.
constexpr double kNearDeg = 1.0;

/// The spring lying on one face.
struct Lying {
    double blade_angle_deg;
    double slope;  ///< of the spring
};

/// Whether a flat lies along the pad to both sides of the foot of its perpendicular from the
/// pivot: a blade that is turned either way then bears on that side, and is driven back.
bool stays_on(const Joint& unloaded, const Lying& lying, double face_mm) {
    const Pad& pad = unloaded.pad;
    const double pivot = unloaded.pivot_mm;
    const TurnedOutline outline(unloaded.outline.body,
                                radians(lying.blade_angle_deg) - std::numbers::pi);
    const double foot = -lying.slope * face_mm / std::hypot(1.0, lying.slope);
    const auto top = outline.top_at(foot);
    if (!top || !top->flat || std::abs(top->slope - lying.slope) > kSameSlope) return false;
    const double front = outline.at_slope(top->arc, top->slope).x_mm;
    const double rear = outline.at_slope(top->arc + 1, top->slope).x_mm;
    const double beside = face_mm * radians(kBesideDeg);
    return foot - beside > std::max(rear, pad.start_mm - pivot) &&
           foot + beside < std::min(front, pad.end_mm - pivot);
}

/// Nothing when it comes to rest on something else.
std::optional<Lying> lying_on(const Joint& unloaded, double nominal_deg, double face_mm) {
    const double a = unloaded.pivot_mm, open = unloaded.face_mm, d = face_mm;
    const double square = a * a + open * open - d * d;
    if (unloaded.outline.kick || !(square > 0.0)) return std::nullopt;
    // (open + slope a)^2 = d^2 (1 + slope^2)
    const double slope = (d - open) * (d + open) / (open * a + d * std::sqrt(square));
    const double rest_deg = nominal_deg + degrees(std::atan(slope));
    if (!(std::abs(rest_deg - nominal_deg) < kNearDeg)) return std::nullopt;
    const Lying lying{rest_deg, slope};
    return stays_on(unloaded, lying, face_mm) ? std::optional(lying) : std::nullopt;
}

/// Both rests, where the spring lies on faces in all there are.
struct LyingFlat {
    Lying closed;
    std::optional<Lying> half_stop;
};

std::optional<LyingFlat> lying_flat(const Joint& unloaded, const Tang& tang) {
    // A face that is tilted against the open one does not lie flat, nor under a blade turned on.
    if (unloaded.face_mm != tang.open_mm || unloaded.open_deg != 180.0) return std::nullopt;
    const auto closed = lying_on(unloaded, 0.0, tang.closed_mm);
    if (!closed) return std::nullopt;
    if (!tang.half_stop_mm) return LyingFlat{*closed, {}};
    const auto half_stop = lying_on(unloaded, 90.0, *tang.half_stop_mm);
    return half_stop ? std::optional(LyingFlat{*closed, half_stop}) : std::nullopt;
}

}  // namespace

Readings unloaded_readings(const Joint& unloaded, const Tang& tang) {
    const auto flat = lying_flat(unloaded, tang);
    if (!flat) return readings(unloaded, find_rests(unloaded, tang.half_stop_mm.has_value()));
    Readings readings;
    readings.closed_mm = flat->closed.slope * unloaded.dial_mm;
    if (flat->half_stop) readings.half_stop_mm = flat->half_stop->slope * unloaded.dial_mm;
    return readings;
}

Rests unloaded_rests(const Joint& unloaded, const Tang& tang) {
    const auto flat = lying_flat(unloaded, tang);
    if (!flat) return find_rests(unloaded, tang.half_stop_mm.has_value());
    Rests rests;
    rests.closed = contact_at(unloaded, flat->closed.blade_angle_deg);
    if (flat->half_stop) rests.half_stop = contact_at(unloaded, flat->half_stop->blade_angle_deg);
    rests.open = open_on_stop(unloaded);
    return rests;
}

}  // namespace backspring

#include "backspring/action/unloaded_readings.hpp"

#include <cmath>

#include "backspring/core/angle.hpp"

namespace backspring {
namespace {

// Wider than rounding, narrower than anything a face could do.
constexpr double kBesideDeg = 1e-3;
// rest_near() looks one degree on either side before it walks on.
constexpr double kNearDeg = 1.0;

/// Reading of the spring lying on one face; nothing when it comes to rest on something else.
std::optional<double> flat_reading_mm(const Joint& unloaded, double nominal_deg, double face_mm) {
    const double a = unloaded.pivot_mm, open = unloaded.face_mm, d = face_mm;
    const double square = a * a + open * open - d * d;
    if (unloaded.outline.kick || !(square > 0.0)) return std::nullopt;
    // (open + slope a)^2 = d^2 (1 + slope^2)
    const double slope = (d - open) * (d + open) / (open * a + d * std::sqrt(square));
    const double rest_deg = nominal_deg + degrees(std::atan(slope));
    if (!(std::abs(rest_deg - nominal_deg) < kNearDeg)) return std::nullopt;
    const double before = contact_at(unloaded, rest_deg - kBesideDeg).torque_nmm;
    const double after = contact_at(unloaded, rest_deg + kBesideDeg).torque_nmm;
    if (!(before < 0.0 && after > 0.0)) return std::nullopt;
    return slope * unloaded.dial_mm;
}

}  // namespace

Readings unloaded_readings(const Joint& unloaded, const Tang& tang) {
    const auto& half_stop = tang.half_stop_mm;
    // A face that is tilted against the open one does not lie flat, nor under a blade turned on.
    if (unloaded.face_mm == tang.open_mm && unloaded.open_deg == 180.0) {
        Readings flat;
        flat.closed_mm = flat_reading_mm(unloaded, 0.0, tang.closed_mm);
        if (half_stop) flat.half_stop_mm = flat_reading_mm(unloaded, 90.0, *half_stop);
        if (flat.closed_mm && (!half_stop || flat.half_stop_mm)) return flat;
    }
    return readings(unloaded, find_rests(unloaded, half_stop.has_value()));
}

}  // namespace backspring

#include "flat_reading.hpp"

#include <cmath>

#include "backspring/action/contact.hpp"
#include "backspring/core/angle.hpp"

namespace backspring {
namespace {

// Wider than rounding, narrower than anything a face could do.
constexpr double kBesideDeg = 1e-3;
// rest_near() looks one degree on either side before it walks on.
constexpr double kNearDeg = 1.0;

}  // namespace

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

}  // namespace backspring

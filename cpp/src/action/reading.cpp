#include "backspring/action/reading.hpp"

namespace backspring {

Readings readings(const Joint& joint, const Rests& rests) {
    const double open = deflection_mm(joint, rests.open, joint.dial_mm);
    const auto relative = [&](const std::optional<Contact>& rest) -> std::optional<double> {
        if (!rest) return std::nullopt;
        return deflection_mm(joint, *rest, joint.dial_mm) - open;
    };
    return {.closed_mm = relative(rests.closed), .half_stop_mm = relative(rests.half_stop)};
}

}  // namespace backspring

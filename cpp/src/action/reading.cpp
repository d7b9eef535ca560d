#include "backspring/action/reading.hpp"

#include <algorithm>

#include "backspring/action/end_stop.hpp"

namespace backspring {
namespace {

/// Where the dial stands with every blade open: its zero.
double all_open_mm(const Joint& joint) {
    constexpr double open_deg = 180.0;
    Joint open = joint;
    const auto hold = [](Neighbour& neighbour) { neighbour.standing = {open_deg, 0.0}; };
    std::ranges::for_each(open.beside, hold);
    if (open.far_end) std::ranges::for_each(open.far_end->blades, hold);
    return back_mm(open, open_on_stop(open), open.dial_mm);
}

}  // namespace

Readings readings(const Joint& joint, const Rests& rests) {
    const double open =
        joint.alone() ? back_mm(joint, rests.open, joint.dial_mm) : all_open_mm(joint);
    const auto relative = [&](const std::optional<Contact>& rest) -> std::optional<double> {
        if (!rest) return std::nullopt;
        return back_mm(joint, *rest, joint.dial_mm) - open;
    };
    return {.closed_mm = relative(rests.closed),
            .half_stop_mm = relative(rests.half_stop),
            .open_mm = joint.alone() ? 0.0 : *relative(rests.open)};
}

}  // namespace backspring

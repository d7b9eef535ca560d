#include "along_outline.hpp"

#include <algorithm>

namespace backspring {
namespace {

SurfacePoint along_flat(const Indenter& indenter, const Touch& from, double by) {
    const int arc = from.part.arc;
    const SurfacePoint front = indenter.outline.at_slope(arc, from.slope);
    const SurfacePoint rear = indenter.outline.at_slope(arc + 1, from.slope);
    const double x = from.x_mm - indenter.pivot_mm + by;
    if (by > 0.0 && x >= front.x_mm) return front;
    if (by < 0.0 && x <= rear.x_mm) return rear;
    return {x, front.y_mm + from.slope * (x - front.x_mm), from.slope, arc, true};
}

SurfacePoint along_arc(const TurnedOutline& outline, const Touch& from, double by) {
    const int arc = from.part.arc;
    const double slope = from.slope + by;
    const double low = outline.lowest_slope(arc), high = outline.highest_slope(arc);
    SurfacePoint place = outline.at_slope(arc, std::clamp(slope, low, high));
    // Beyond its ends lie the flats.
    if (slope > high && arc + 1 < outline.count()) place.flat = true;
    if (slope < low && arc > 0) place.arc = arc - 1, place.flat = true;
    return place;
}

}  // namespace

bool detail::go_along(const Indenter& indenter, double by, Touch& touch) {
    SurfacePoint place =
        touch.part.flat ? along_flat(indenter, touch, by) : along_arc(indenter.outline, touch, by);
    const double x = indenter.pivot_mm + place.x_mm;
    touch.x_mm = std::clamp(x, indenter.pad.start_mm, indenter.pad.end_mm);
    if (touch.x_mm != x) {
        const auto top = indenter.outline.top_at(touch.x_mm - indenter.pivot_mm);
        if (!top) return false;
        place = *top;
    }
    touch.height_mm = place.y_mm;
    touch.slope = place.slope;
    touch.part.arc = place.arc;
    touch.part.flat = place.flat;
    return true;
}

std::optional<Touch> detail::turned_along(const Indenter& indenter, const Touch& before) {
    const TurnedOutline& outline = indenter.outline;
    const int arc = before.part.arc;
    Touch touch = before;
    if (arc + (touch.part.flat ? 1 : 0) >= outline.count()) return std::nullopt;
    const double low = outline.lowest_slope(arc), high = outline.highest_slope(arc);
    if (touch.part.flat) touch.slope = high;
    if (!(touch.slope >= low && touch.slope <= high)) return std::nullopt;
    const double x = touch.x_mm - indenter.pivot_mm;
    const bool off_flat = touch.part.flat && !(x < outline.at_slope(arc, high).x_mm &&
                                               x > outline.at_slope(arc + 1, high).x_mm);
    if (off_flat || !go_along(indenter, 0.0, touch)) return std::nullopt;
    return touch;
}

}  // namespace backspring

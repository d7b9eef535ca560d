#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
#include <type_traits>

#include "backspring/action/contact.hpp"
#include "backspring/core/root.hpp"
#include "backspring/tang/envelope.hpp"

namespace backspring::detail {

/// How the spring answers one force at a station, all other forces in place.
struct Answer {
    double face_mm;    ///< face without this force, above the pivot
    double slope;      ///< its slope
    double mm_per_n;   ///< movement of the station itself
    double rad_per_n;  ///< half of that movement's rate along the spring: the mean slope
};

/// Stations a bearing may look at.
struct Range {
    double start_mm;
    double end_mm;
};

/// Finds where a convex outline bears on the spring: the place that makes p^2/C stationary.
///
/// The outline's slope rises from front to rear. A place is right when the loaded face would have
/// the outline's own slope there; the difference of the two changes sign only once.
template <class Spring>
class BearingSearch {
  public:
    BearingSearch(const TurnedOutline& outline, double pivot_mm, Range range, const Spring& spring)
        : outline_(outline), pivot_mm_(pivot_mm), range_(range), spring_(spring) {}

    /// The bearing on the pad; its force is 0 where the outline does not reach the face.
    [[nodiscard]] std::optional<Touch> on(const Pad& pad) const { return on(pad, search().touch); }

    /// The same from where it would bear if the pad had no ends.
    [[nodiscard]] std::optional<Touch> on(const Pad& pad, const Touch& free) const {
        const double x = std::clamp(free.x_mm, pad.start_mm, pad.end_mm);
        if (x == free.x_mm) return free;
        const auto top = outline_.top_at(x - pivot_mm_);
        if (!top) return std::nullopt;
        return bear(*top).touch;
    }

    /// The bearing near a touch of the part that bears, by secants from there; nothing where it
    /// lies beyond that part's ends or the pad's.
    ///
    /// @param rate  of the miss, about: by the slope on an arc, by the way to the rear on a flat
    [[nodiscard]] std::optional<Touch> near(const Pad& pad, const Touch& touch, double rate) const {
        constexpr double settled = 1e-12;
        const int arc = touch.part.arc;
        const double low = outline_.lowest_slope(arc), high = outline_.highest_slope(arc);
        const auto found = [&]() -> Trial {
            if (touch.part.flat) {
                const SurfacePoint front = outline_.at_slope(arc, high);
                const double rear_mm = outline_.at_slope(arc + 1, high).x_mm;
                const double way = pivot_mm_ - touch.x_mm;
                const auto at = [&](double to) { return along_flat(front, to); };
                return homed(at, way, at(way), {-front.x_mm, -rear_mm}, rate);
            }
            const auto at = [&](double slope) { return bear(arc, slope); };
            return homed(at, touch.slope, at(touch.slope), {low, high}, rate);
        }();
        const double x = found.touch.x_mm;
        const bool within = x > pad.start_mm && x < pad.end_mm;
        if (!within || !(std::abs(found.miss()) <= settled)) return std::nullopt;
        return found.touch;
    }

    /// At an edge of the pad, where the right place surely lies beyond it.
    ///
    /// @param ahead_mm  the edge from the pivot
    /// @param arc       that bears there, or is ahead of the flat that does
    [[nodiscard]] std::optional<Touch> at_edge(const Pad& pad, double ahead_mm, int arc) const {
        auto top = outline_.top_of(arc, ahead_mm);
        if (!top) top = outline_.top_at(ahead_mm);
        if (!top) return std::nullopt;
        const bool start = pivot_mm_ + ahead_mm < 0.5 * (pad.start_mm + pad.end_mm);
        const Trial trial = bear(start ? pad.start_mm : pad.end_mm, *top);
        const bool beyond = start ? trial.miss() > kSettled : trial.miss() < -kSettled;
        return beyond && trial.touch.force_n > 0.0 ? std::optional(trial.touch) : std::nullopt;
    }

    /// By how much the face, loaded at a place, is steeper than the outline there: above 0 where
    /// the right place lies farther towards the rear.
    [[nodiscard]] double miss_at(const SurfacePoint& point) const { return bear(point).miss(); }

  private:
    static constexpr double kSettled = 1e-14;

    /// A place tried: the touch it would make and the slope of the face so loaded.
    struct Trial {
        Touch touch;
        double face_slope;

        [[nodiscard]] double miss() const { return face_slope - touch.slope; }
    };

    /// @param point  of the outline at the station, whose own x is not read
    [[nodiscard]] Trial bear(double x, const SurfacePoint& point) const {
        Trial trial{{.x_mm = x,
                     .height_mm = point.y_mm,
                     .slope = point.slope,
                     .force_n = 0.0,
                     .part = {.arc = point.arc, .flat = point.flat}},
                    0.0};
        // A place out of range is sent back: the face there is as steep as can be.
        if (x < range_.start_mm || x > range_.end_mm) {
            constexpr double back = 2.0 * TurnedOutline::kSteep;
            trial.face_slope = x < range_.start_mm ? -back : back;
            return trial;
        }
        const Answer answer = answer_at(x, point);
        const double overlap = point.y_mm - answer.face_mm;
        if (overlap > 0.0 && answer.mm_per_n > 0.0) trial.touch.force_n = overlap / answer.mm_per_n;
        trial.face_slope = answer.slope + trial.touch.force_n * answer.rad_per_n;
        return trial;
    }

    /// A spring may answer by what bears, too.
    [[nodiscard]] Answer answer_at(double x, const SurfacePoint& point) const {
        if constexpr (std::is_invocable_v<Spring, double, SurfacePoint>)
            return spring_(x, point);
        else
            return spring_(x);
    }

    [[nodiscard]] Trial bear(const SurfacePoint& point) const {
        return bear(pivot_mm_ + point.x_mm, point);
    }

    [[nodiscard]] Trial bear(int arc, double slope) const {
        return bear(outline_.at_slope(arc, slope));
    }

    [[nodiscard]] Trial search() const {
        int arc = outline_.level_arc();
        const double low = outline_.lowest_slope(arc), high = outline_.highest_slope(arc);
        Trial trial = on_arc(arc, low, high, bear(arc, std::clamp(0.0, low, high)));
        // A place that the range cuts off within an arc has no neighbour to go on to.
        while (trial.miss() > kSettled && arc + 1 < outline_.count() &&
               trial.touch.slope >= outline_.highest_slope(arc)) {  // towards the rear
            const Trial behind = bear(arc + 1, trial.touch.slope);
            if (behind.miss() <= 0.0) return on_flat(trial, behind);
            ++arc;
            trial = on_arc(arc, trial.touch.slope, outline_.highest_slope(arc), behind);
        }
        while (trial.miss() < -kSettled && arc > 0 &&
               trial.touch.slope <= outline_.lowest_slope(arc)) {  // towards the front
            const Trial ahead = bear(arc - 1, trial.touch.slope);
            if (ahead.miss() >= 0.0) return on_flat(ahead, trial);
            --arc;
            trial = on_arc(arc, outline_.lowest_slope(arc), trial.touch.slope, ahead);
        }
        return trial;
    }

    /// The right place on an arc, or the end of the arc beyond which it lies.
    [[nodiscard]] Trial on_arc(int arc, double low, double high, const Trial& first) const {
        const auto at = [&](double slope) { return bear(arc, slope); };
        return homed(at, first.touch.slope, first, {low, high}, -1.0);
    }

    /// The place on the flat between two trials where the loaded face runs along the flat.
    [[nodiscard]] Trial on_flat(const Trial& ahead, const Trial& behind) const {
        const double slope = ahead.touch.slope;
        // By the way towards the rear.
        const auto at = [&](double way) {
            const double height = ahead.touch.height_mm - slope * (way + ahead.touch.x_mm);
            return bear(-way, {-way, height, slope, ahead.touch.part.arc, true});
        };
        // Only as much of the flat as lies in range, lest its ends set the scale of the root.
        const Trial rear = behind.touch.x_mm < range_.start_mm ? at(-range_.start_mm) : behind;
        const Trial front = ahead.touch.x_mm > range_.end_mm ? at(-range_.end_mm) : ahead;
        if (rear.miss() >= 0.0) return rear;
        if (front.miss() <= 0.0) return front;
        const double low = -front.touch.x_mm, high = -rear.touch.x_mm;
        const double rate = (rear.miss() - front.miss()) / (high - low);
        const double way = std::clamp(low - front.miss() / rate, low, high);
        return homed(at, way, at(way), {low, high}, rate);
    }

    /// On the flat behind its front end, by the way towards the rear from the pivot.
    [[nodiscard]] Trial along_flat(const SurfacePoint& front, double way_mm) const {
        const double height = front.y_mm - front.slope * (way_mm + front.x_mm);
        return bear({-way_mm, height, front.slope, front.arc, true});
    }

    /// Ends of a part, in the sense in which a miss falls.
    struct Ends {
        double low, high;
    };

    /// Where a miss vanishes, or the end beyond which it does: secant steps, kept inside a bracket
    /// that shrinks, and then halves of it, for a miss may jump where the spring has a step.
    template <class At>
    [[nodiscard]] Trial homed(
        const At& at, double place, Trial trial, Ends ends, double rate) const {
        constexpr int secants = 12, most = 200;
        auto [low, high] = ends;
        bool low_tried = false, high_tried = false;
        for (int round = 0; round < most && std::abs(trial.miss()) > kSettled; ++round) {
            const double miss = trial.miss();
            if (miss > 0.0 ? place >= high : place <= low) break;
            (miss > 0.0 ? low : high) = place;
            (miss > 0.0 ? low_tried : high_tried) = true;
            double next = place - miss / rate;
            if (!(next > low)) next = low_tried ? 0.5 * (low + high) : low;
            if (!(next < high)) next = high_tried ? 0.5 * (low + high) : high;
            if (round > secants && low_tried && high_tried) next = 0.5 * (low + high);
            if (next == place) break;
            trial = at(next);
            rate = (trial.miss() - miss) / (next - place);
            place = next;
        }
        return trial;
    }

    const TurnedOutline& outline_;
    double pivot_mm_;
    Range range_;
    const Spring& spring_;
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#include "newton_bearing.hpp"

#include <algorithm>
#include <cmath>

#include "newton_steps.hpp"

namespace backspring {
namespace {

constexpr int kMostNewtonSteps = 8;
// Of slopes on an arc of little radius, of mm on a flat, where the torque goes with the place.
constexpr double kOfTwoSlopes = 1e-6;
constexpr double kOfTwoPlaces = 1e-8;
// Of the way from the pin: over so little the slope that a force gives the face goes on straight.
// On a flat that is all that tells the place.
constexpr double kStraight = 5e-7;
constexpr int kMostFineSteps = 4;
constexpr double kFine = 1e-13;

/// A place of the outline and the spring loaded there.
struct NewtonTrial {
    SurfacePoint point{};
    OwnCompliance own{};
    Pressed pressed{};
};

class NewtonBearing {
  public:
    NewtonBearing(const Flexibility& flexibility, const Indenter& indenter, int arc)
        : flexibility_(flexibility), indenter_(indenter), outline_(indenter.outline), arc_(arc) {}

    /// From a place on the part that bears; nothing where that is another part.
    [[nodiscard]] std::optional<Touch> search_from(const PlaceGuess& guess) {
        if (guess.flat) {
            const double slope = outline_.highest_slope(arc_);
            const SurfacePoint front = outline_.at_slope(arc_, slope);
            const SurfacePoint rear = outline_.at_slope(arc_ + 1, slope);
            return along_flat(front, rear.x_mm, guess.place);
        }
        NewtonTrial here;
        LastTwo two = on_this_arc();
        if (!has(guess.place) || !bear(here, outline_.at_slope(arc_, guess.place)) ||
            !go_along_arc(here, two) || !two.looked_enough()) {
            return std::nullopt;
        }
        return ended_on_arc(here, two);
    }

    [[nodiscard]] std::optional<Touch> search() {
        double start = 0.0;
        if (!outline_.surely_has(arc_, start)) {
            look_up_ends();
            start = std::clamp(0.0, low_, high_);
        }
        NewtonTrial here, across;
        if (!bear(here, outline_.at_slope(arc_, start))) return std::nullopt;
        for (int part = 0; part < outline_.count(); ++part) {
            LastTwo two = on_this_arc();
            if (!go_along_arc(here, two)) return std::nullopt;
            if (two.looked_enough()) return ended_on_arc(here, two);
            const bool rearward = here.pressed.miss > 0.0;
            const int next = rearward ? arc_ + 1 : arc_ - 1;
            if (next < 0 || next >= outline_.count()) return std::nullopt;
            if (!bear(across, outline_.at_slope(next, here.point.slope))) return std::nullopt;
            if (rearward ? across.pressed.miss <= 0.0 : across.pressed.miss >= 0.0) {
                return rearward ? on_flat(here, across) : on_flat(across, here);
            }
            arc_ = next;
            here = across;
        }
        return std::nullopt;
    }

  private:
    [[nodiscard]] double free_face_mm(double x) const {
        return indenter_.face_mm + indenter_.face_slope * x;
    }

    /// False where the outline does not reach the face or how the spring answers is not smooth.
    [[nodiscard]] bool bear(NewtonTrial& trial, const SurfacePoint& point) const {
        const double x = indenter_.pivot_mm + point.x_mm;
        const double overlap = point.y_mm - free_face_mm(x);
        if (!(x >= 0.5 * indenter_.pad.start_mm && overlap > 0.0)) return false;
        trial.own = own_compliance(flexibility_, x);
        if (!(trial.own.mm_per_n > 0.0 && trial.own.to_mm > trial.own.from_mm)) return false;
        press(trial, point, overlap);
        return true;
    }

    /// The force at a place where the spring's answer is known.
    void press(NewtonTrial& trial, const SurfacePoint& point, double overlap) const {
        const OwnCompliance& own = trial.own;
        trial.point = point;
        trial.pressed = backspring::press(overlap, point.slope - indenter_.face_slope, own.mm_per_n,
                                          own.rad_per_n, own.rad_per_nmm);
    }

    [[nodiscard]] LastTwo on_this_arc() const {
        const double radius = outline_.radius_mm(arc_);
        // From the pivot, which lies about as far from the pin as what bears.
        const double straight = kStraight * indenter_.pivot_mm / std::max(radius, 1e-3);
        return LastTwo{kOfTwoSlopes / (1.0 + radius * radius), std::min(straight, 1e-3)};
    }

    void look_up_ends() {
        if (ends_of_ == arc_) return;
        low_ = outline_.lowest_slope(arc_), high_ = outline_.highest_slope(arc_);
        ends_of_ = arc_;
    }

    [[nodiscard]] bool has(double slope) {
        if (outline_.surely_has(arc_, slope)) return true;
        look_up_ends();
        return slope >= low_ && slope <= high_;
    }

    [[nodiscard]] MissAt on_arc(const NewtonTrial& trial) const {
        const double slope = trial.point.slope, steep = 1.0 + slope * slope;
        // The place goes towards the rear by r/steep^(3/2) as the slope grows.
        const double out = outline_.radius_mm(arc_) / std::sqrt(steep);
        return {slope, trial.pressed.miss, -steep / (trial.pressed.slope_rate * out + steep),
                trial.own.from_mm};
    }

    /// Goes on to within a step of the right place on the arc, or to the end beyond which it lies.
    [[nodiscard]] bool go_along_arc(NewtonTrial& trial, LastTwo& two) {
        for (int step = 0; step < kMostNewtonSteps; ++step) {
            two.add(on_arc(trial));
            if (two.looked_enough()) return true;
            double next = two.next_place();
            if (!has(next)) {
                const double here = trial.point.slope;
                if (trial.pressed.miss > 0.0 ? here >= high_ : here <= low_) return true;
                next = std::clamp(next, low_, high_);
            }
            if (!bear(trial, outline_.at_slope(arc_, next))) return false;
        }
        return false;
    }

    [[nodiscard]] std::optional<Touch> ended_on_arc(const NewtonTrial& trial, const LastTwo& two) {
        const auto at = [&](double slope) -> std::optional<SurfacePoint> {
            return has(slope) ? std::optional(outline_.at_slope(arc_, slope)) : std::nullopt;
        };
        const auto step = [&](const NewtonTrial& there) { return on_arc(there).newton_step(); };
        return ended(trial, two, at, step);
    }

    /// The place on the flat between two trials where the loaded face runs along the flat.
    [[nodiscard]] std::optional<Touch> on_flat(const NewtonTrial& ahead,
                                               const NewtonTrial& behind) const {
        const double front = ahead.point.x_mm, rear = behind.point.x_mm;
        const double share = behind.pressed.miss / (behind.pressed.miss - ahead.pressed.miss);
        return along_flat(ahead.point, rear, rear + (front - rear) * share);
    }

    /// The same from a place between the flat's front end and its rear one.
    [[nodiscard]] std::optional<Touch> along_flat(const SurfacePoint& front,
                                                  double rear_mm,
                                                  double place) const {
        const auto at = [&](double x) -> std::optional<SurfacePoint> {
            if (!(x > rear_mm && x < front.x_mm)) return std::nullopt;
            return SurfacePoint{x, front.y_mm + front.slope * (x - front.x_mm), front.slope,
                                front.arc, true};
        };
        const auto way = [](const NewtonTrial& there) {
            return -there.pressed.miss / there.pressed.slope_rate;
        };
        NewtonTrial trial;
        LastTwo two{kOfTwoPlaces, 0.0};
        for (int step = 0; step < kMostNewtonSteps; ++step) {
            const auto point = at(place);
            if (!point || !bear(trial, *point)) return std::nullopt;
            two.add({place, trial.pressed.miss, 1.0 / trial.pressed.slope_rate, trial.own.from_mm});
            if (two.looked_enough()) return ended(trial, two, at, way);
            place = two.next_place();
        }
        return std::nullopt;
    }

    /// The last steps, so short that the spring's answer goes on in a parabola: one where that
    /// leaves nothing, or as many as find the place on it.
    template <class At, class Step>
    [[nodiscard]] std::optional<Touch> ended(const NewtonTrial& looked,
                                             const LastTwo& two,
                                             const At& at,
                                             const Step& step) const {
        const OwnCompliance& known = looked.own;
        NewtonTrial trial = looked;
        double place = two.next_place();
        for (int left = two.one_step_left() ? 1 : kMostFineSteps; left > 0; --left) {
            const auto point = at(place);
            if (!point) return std::nullopt;
            const double x = indenter_.pivot_mm + point->x_mm;
            if (!(x >= known.from_mm && x <= known.to_mm)) return std::nullopt;
            const double by = point->x_mm - looked.point.x_mm;
            trial.own.mm_per_n =
                known.mm_per_n + by * (2.0 * known.rad_per_n + by * known.rad_per_nmm);
            trial.own.rad_per_n = known.rad_per_n + by * known.rad_per_nmm;
            press(trial, *point, point->y_mm - free_face_mm(x));
            if (left == 1) break;
            const double way = step(trial);
            if (std::abs(way) <= kFine) break;
            place += way;
        }
        return Touch{.x_mm = indenter_.pivot_mm + trial.point.x_mm,
                     .height_mm = trial.point.y_mm,
                     .slope = trial.point.slope,
                     .force_n = trial.pressed.force_n,
                     .part = {.arc = trial.point.arc, .flat = trial.point.flat}};
    }

    const Flexibility& flexibility_;
    const Indenter& indenter_;
    const TurnedOutline& outline_;
    int arc_;
    int ends_of_ = -1;  ///< the arc whose ends are known
    double low_ = 0.0, high_ = 0.0;
};

}  // namespace

std::optional<Touch> detail::newton_bearing(const Flexibility& flexibility,
                                            const Indenter& indenter,
                                            const PlaceGuess* guess) {
    if (indenter.pushed) return std::nullopt;
    if (guess) {
        if (auto touch = NewtonBearing(flexibility, indenter, guess->arc).search_from(*guess)) {
            return touch;
        }
    }
    return NewtonBearing(flexibility, indenter, indenter.outline.level_arc()).search();
}

}  // namespace backspring

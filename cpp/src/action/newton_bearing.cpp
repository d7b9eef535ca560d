#include "newton_bearing.hpp"

#include <algorithm>
#include <cmath>

namespace backspring {
namespace {

constexpr int kMostNewtonSteps = 8;
// Of slopes on an arc of little radius, of mm on a flat, where the torque goes with the place.
constexpr double kOfTwoSlopes = 1e-6;
constexpr double kOfTwoPlaces = 1e-8;

/// A place of the outline and the spring loaded there.
struct NewtonTrial {
    SurfacePoint point{};
    OwnCompliance own{};
    double force_n = 0.0;
    double miss = 0.0;        ///< by how much the loaded face is steeper than the outline
    double slope_rate = 0.0;  ///< how fast that face grows steeper with the station
};

/// A coordinate along a part of the outline, slope or station, and the miss there with its rate.
struct MissAt {
    double place = 0.0, miss = 0.0, place_per_miss = 0.0;
    double stretch_mm = -1.0;  ///< where the smooth stretch begins that it lies on

    [[nodiscard]] double newton_step() const { return -miss * place_per_miss; }
};

/// The last two places of a search along a part: a cubic in the miss has both, with both rates.
struct LastTwo {
    double of_two;  ///< product of the last two ways that is small enough
    MissAt before{}, last{};

    void add(const MissAt& next) {
        before = last;
        last = next;
    }

    [[nodiscard]] bool smooth() const {
        return before.stretch_mm == last.stretch_mm && before.miss != last.miss;
    }

    /// Whether what the next step leaves is rounding: the square of the last one's way by Newton's
    /// method, of the product of the last two by the cubic, both times far less than one.
    [[nodiscard]] bool one_step_left() const {
        constexpr double alone = 1e-9, short_way = 1e-4;
        const double left = std::abs(last.newton_step());
        if (left <= alone) return true;
        return smooth() && left <= short_way &&
               left * std::abs(last.place - before.place) <= of_two;
    }

    [[nodiscard]] double next_place() const {
        const double newton = last.place + last.newton_step();
        if (!smooth()) return newton;
        const double apart = before.miss - last.miss;
        const double chord = (before.place - last.place) / apart;
        const double square = (chord - last.place_per_miss) / apart;
        const double cube =
            (before.place_per_miss - 2.0 * chord + last.place_per_miss) / (apart * apart);
        return newton + last.miss * last.miss * (square - cube * before.miss);
    }
};

class NewtonBearing {
  public:
    NewtonBearing(const Flexibility& flexibility, const Indenter& indenter)
        : flexibility_(flexibility),
          indenter_(indenter),
          outline_(indenter.outline),
          arc_(outline_.level_arc()) {}

    [[nodiscard]] std::optional<Touch> search() {
        double start = 0.0;
        if (!outline_.surely_has(arc_, start)) {
            look_up_ends();
            start = std::clamp(0.0, low_, high_);
        }
        NewtonTrial here, across;
        if (!bear(here, outline_.at_slope(arc_, start))) return std::nullopt;
        for (int part = 0; part < outline_.count(); ++part) {
            const double radius = outline_.radius_mm(arc_);
            LastTwo two{kOfTwoSlopes / (1.0 + radius * radius)};
            if (!go_along_arc(here, two)) return std::nullopt;
            if (two.one_step_left()) return ended_on_arc(here, two);
            const bool rearward = here.miss > 0.0;
            const int next = rearward ? arc_ + 1 : arc_ - 1;
            if (next < 0 || next >= outline_.count()) return std::nullopt;
            if (!bear(across, outline_.at_slope(next, here.point.slope))) return std::nullopt;
            if (rearward ? across.miss <= 0.0 : across.miss >= 0.0) {
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
        trial.point = point;
        trial.own = own_compliance(flexibility_, x);
        const OwnCompliance& own = trial.own;
        if (!(own.mm_per_n > 0.0 && own.to_mm > own.from_mm)) return false;
        const double per_way = 1.0 / own.mm_per_n, force = overlap * per_way;
        const double turned = force * own.rad_per_n;
        // The outline rises by its slope, the free face by its own.
        const double above_face = point.slope - indenter_.face_slope;
        trial.force_n = force;
        trial.miss = turned - above_face;
        trial.slope_rate =
            (above_face - 2.0 * turned) * per_way * own.rad_per_n + force * own.rad_per_nmm;
        return true;
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
        return {slope, trial.miss, -steep / (trial.slope_rate * out + steep), trial.own.from_mm};
    }

    /// Goes on to within a step of the right place on the arc, or to the end beyond which it lies.
    [[nodiscard]] bool go_along_arc(NewtonTrial& trial, LastTwo& two) {
        for (int step = 0; step < kMostNewtonSteps; ++step) {
            two.add(on_arc(trial));
            if (two.one_step_left()) return true;
            double next = two.next_place();
            if (!has(next)) {
                const double here = trial.point.slope;
                if (trial.miss > 0.0 ? here >= high_ : here <= low_) return true;
                next = std::clamp(next, low_, high_);
            }
            if (!bear(trial, outline_.at_slope(arc_, next))) return false;
        }
        return false;
    }

    [[nodiscard]] std::optional<Touch> ended_on_arc(const NewtonTrial& trial, const LastTwo& two) {
        const double slope = two.next_place();
        if (!has(slope)) return std::nullopt;
        return ended(trial, outline_.at_slope(arc_, slope));
    }

    /// The place on the flat between two trials where the loaded face runs along the flat.
    [[nodiscard]] std::optional<Touch> on_flat(const NewtonTrial& ahead,
                                               const NewtonTrial& behind) const {
        const double front = ahead.point.x_mm, rear = behind.point.x_mm;
        const auto at = [&](double x) {
            return SurfacePoint{x, ahead.point.y_mm + ahead.point.slope * (x - front),
                                ahead.point.slope, ahead.point.arc, true};
        };
        double place = rear + (front - rear) * behind.miss / (behind.miss - ahead.miss);
        NewtonTrial trial;
        LastTwo two{kOfTwoPlaces};
        for (int step = 0; step < kMostNewtonSteps; ++step) {
            if (!bear(trial, at(place))) return std::nullopt;
            two.add({place, trial.miss, 1.0 / trial.slope_rate, trial.own.from_mm});
            place = two.next_place();
            if (!(place > rear && place < front)) return std::nullopt;
            if (two.one_step_left()) return ended(trial, at(place));
        }
        return std::nullopt;
    }

    /// The last step, as short as that the spring's answer goes on in a parabola.
    [[nodiscard]] std::optional<Touch> ended(const NewtonTrial& trial,
                                             const SurfacePoint& point) const {
        const OwnCompliance& own = trial.own;
        const double x = indenter_.pivot_mm + point.x_mm, by = point.x_mm - trial.point.x_mm;
        if (!(x >= own.from_mm && x <= own.to_mm)) return std::nullopt;
        const double moves = own.mm_per_n + by * (2.0 * own.rad_per_n + by * own.rad_per_nmm);
        return Touch{.x_mm = x,
                     .height_mm = point.y_mm,
                     .slope = point.slope,
                     .force_n = (point.y_mm - free_face_mm(x)) / moves,
                     .part = {.arc = point.arc, .flat = point.flat}};
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
                                            const Indenter& indenter) {
    if (indenter.pushed) return std::nullopt;
    return NewtonBearing(flexibility, indenter).search();
}

}  // namespace backspring

#include "backspring/fit/flush_targets.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "../check/along_back.hpp"
#include "backspring/core/root.hpp"
#include "fitted.hpp"

namespace backspring {
namespace {

constexpr double kFarthestTargetMm = 1.0;
constexpr double kFirstStepMm = 0.02;
constexpr int kTargetBits = 26;
// The back is flush at the middle pin whatever is ground: what is low shows from here on.
constexpr double kNearPin = 1e-3;

/// A knife fitted for one reading.
class FittedKnife {
  public:
    FittedKnife(const Design& design, double target_mm)
        : design_(detail::fitted(design, target_mm, {})),
          joint_(make_joint(design_.spring, design_.tang, design_.fit)),
          rests_(find_rests(joint_, design_.tang.half_stop_mm.has_value())),
          back_(whole_back(joint_, rests_)) {}

    /// Proud at most less low at most, over both positions.
    [[nodiscard]] double balance_mm() const { return proud_mm() - low_mm(); }
    [[nodiscard]] double farthest_mm() const { return std::max(proud_mm(), low_mm()); }

    /// Below 0 where any of the back is low. Held against the lift that a force at the pivot
    /// gives, so that it crosses 0 although the back is never above 0 at the middle pin.
    [[nodiscard]] double least_lift_n() const {
        double least = std::numeric_limits<double>::infinity();
        for (const Contact* position : positions()) {
            const auto low = [&](double x) {
                return -above_open_mm(joint_, rests_.open, *position, x) /
                       deflection_per_force(joint_.flexibility, x, joint_.pivot_mm);
            };
            const auto stations = smooth_stretches(joint_, rests_.open, *position, near_pin_mm());
            least = std::min(least, -greatest_along(low, stations).value);
        }
        return least;
    }

    /// Where the position that is farthest from open reads flush, nearest to the dial.
    [[nodiscard]] std::optional<double> flush_station_mm() const {
        std::optional<double> nearest;
        const Contact& position = *positions()[half_stop_is_farther() ? 0 : positions().size() - 1];
        const auto above = [&](double x) {
            return above_open_mm(joint_, rests_.open, position, x);
        };
        const auto stations = smooth_stretches(joint_, rests_.open, position, near_pin_mm());
        for (std::size_t i = 1; i < stations.size(); ++i) {
            const double from = stations[i - 1], to = stations[i];
            const double at_from = above(from), at_to = above(to);
            if (from == to || at_from * at_to > 0.0) continue;
            const double root = find_root(above, from, to, at_from, at_to);
            if (!nearest || std::abs(root - joint_.dial_mm) < std::abs(*nearest - joint_.dial_mm)) {
                nearest = root;
            }
        }
        return nearest;
    }

  private:
    [[nodiscard]] std::vector<const Contact*> positions() const {
        std::vector<const Contact*> found;
        if (rests_.half_stop) found.push_back(&*rests_.half_stop);
        if (rests_.closed) found.push_back(&*rests_.closed);
        return found;
    }

    [[nodiscard]] static double farthest_of(const std::optional<BackAlong>& back) {
        return back ? std::max(back->greatest_mm, -back->least_mm) : 0.0;
    }
    [[nodiscard]] bool half_stop_is_farther() const {
        return farthest_of(back_.half_stop) > farthest_of(back_.closed);
    }
    [[nodiscard]] double proud_mm() const {
        return std::max(back_.half_stop ? back_.half_stop->greatest_mm : 0.0,
                        back_.closed ? back_.closed->greatest_mm : 0.0);
    }
    [[nodiscard]] double low_mm() const {
        return -std::min(back_.half_stop ? back_.half_stop->least_mm : 0.0,
                         back_.closed ? back_.closed->least_mm : 0.0);
    }
    [[nodiscard]] double near_pin_mm() const { return kNearPin * joint_.pad.end_mm; }

    Design design_;
    Joint joint_;
    Rests rests_;
    WholeBack back_;
};

/// The reading at which a value that rises with it is 0; none within reach.
std::optional<double> reading_where(FunctionRef rising) {
    try {
        double from = 0.0, at_from = rising(from);
        const double way = at_from < 0.0 ? 1.0 : -1.0;
        for (double reach = kFirstStepMm; reach <= kFarthestTargetMm; reach *= 2.0) {
            const double to = way * reach, at_to = rising(to);
            if (at_from * at_to <= 0.0) {
                return find_root(rising, from, to, at_from, at_to, kTargetBits);
            }
            from = to;
            at_from = at_to;
        }
    } catch (const NoConvergence&) {
        // No tang gives such a reading.
    }
    return std::nullopt;
}

}  // namespace

FlushTargets flush_targets(const Design& design) {
    const auto fitted_for = [&](double target_mm) { return FittedKnife(design, target_mm); };
    FlushTargets targets;
    targets.nowhere_low_mm =
        reading_where([&](double target) { return fitted_for(target).least_lift_n(); });
    targets.flattest_mm =
        reading_where([&](double target) { return fitted_for(target).balance_mm(); });
    if (targets.flattest_mm) {
        const FittedKnife flattest = fitted_for(*targets.flattest_mm);
        targets.flattest_off_mm = flattest.farthest_mm();
        targets.flattest_dial_mm = flattest.flush_station_mm();
    }
    return targets;
}

}  // namespace backspring

#include "backspring/fit/flush_targets.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "backspring/core/root.hpp"
#include "backspring/design/joint_of.hpp"
#include "fitted.hpp"

namespace backspring {
namespace {

constexpr double kFarthestTargetMm = 1.0;
constexpr double kFirstStepMm = 0.02;
constexpr int kTargetBits = 26;

/// The design without the other blades at its own blade's end, where the proudest tang counts.
Design without_beside(Design design) {
    const End end = design.own().end;
    const auto others = std::remove_if(design.blades.begin() + 1, design.blades.end(),
                                       [&](const Blade& blade) { return blade.end == end; });
    design.blades.erase(others, design.blades.end());
    return design;
}

/// A knife fitted for one reading.
class FittedKnife {
  public:
    FittedKnife(const Design& design, double target_mm)
        : design_(detail::fitted(design, target_mm, {})),
          joint_(make_joint(as_read(design_))),
          rests_(find_rests(joint_, design_.own().tang.half_stop_mm.has_value())) {}

    /// Proud at most less low at most, over both positions.
    [[nodiscard]] double balance_mm() { return proud_mm() - low_mm(); }
    [[nodiscard]] double farthest_mm() { return std::max(proud_mm(), low_mm()); }

    /// Below 0 where any of the back is low.
    [[nodiscard]] double least_lift_n() const {
        double least = std::numeric_limits<double>::infinity();
        for (const auto* position : {&rests_.half_stop, &rests_.closed}) {
            if (!*position) continue;
            least = std::min(least, backspring::least_lift_n(joint_, rests_.open, **position));
        }
        return least;
    }

    /// Where the position that is farthest from open reads flush.
    [[nodiscard]] std::optional<double> flush_station_mm() {
        const bool half = farthest_of(back().half_stop) > farthest_of(back().closed);
        const auto& position = half ? rests_.half_stop : rests_.closed;
        if (!position) return std::nullopt;
        return backspring::flush_station_mm(joint_, rests_.open, *position);
    }

  private:
    [[nodiscard]] static double farthest_of(const std::optional<BackAlong>& back) {
        return back ? std::max(back->greatest_mm, -back->least_mm) : 0.0;
    }
    [[nodiscard]] double proud_mm() {
        return std::max(back().half_stop ? back().half_stop->greatest_mm : 0.0,
                        back().closed ? back().closed->greatest_mm : 0.0);
    }
    [[nodiscard]] double low_mm() {
        return -std::min(back().half_stop ? back().half_stop->least_mm : 0.0,
                         back().closed ? back().closed->least_mm : 0.0);
    }
    /// Only the flattest is told by it.
    [[nodiscard]] const WholeBack& back() {
        if (!back_) back_ = whole_back(joint_, rests_);
        return *back_;
    }

    Design design_;
    Joint joint_;
    Rests rests_;
    std::optional<WholeBack> back_;
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
    const Design one = without_beside(design);
    const auto fitted_for = [&](double target_mm) { return FittedKnife(one, target_mm); };
    FlushTargets targets;
    targets.nowhere_low_mm =
        reading_where([&](double target) { return fitted_for(target).least_lift_n(); });
    targets.flattest_mm =
        reading_where([&](double target) { return fitted_for(target).balance_mm(); });
    if (targets.flattest_mm) {
        FittedKnife flattest = fitted_for(*targets.flattest_mm);
        targets.flattest_off_mm = flattest.farthest_mm();
        targets.flattest_dial_mm = flattest.flush_station_mm();
    }
    return targets;
}

WholeBack fitted_back(const Design& design, double target_mm) {
    return whole_back(as_read(detail::fitted(design, target_mm, {})));
}

}  // namespace backspring

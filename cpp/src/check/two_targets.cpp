#include <algorithm>
#include <cmath>

#include "two_view.hpp"

namespace backspring {
namespace {

/// Every row of both blades.
template <class See>
void each_row(const TwoCheck& check, See see) {
    for (const auto* rows : {&check.first, &check.second}) {
        std::for_each(rows->begin(), rows->end(), see);
    }
}

/// Least and greatest of the rows' largest pulls; nothing without a nail nick or a stroke.
struct Pulls {
    std::optional<double> low, high;
};

Pulls pulls_of(const TwoCheck& check) {
    Pulls pulls;
    each_row(check, [&](const Beside& row) {
        std::optional<double> peak;
        for (const StrokeReport& stroke : row.strokes) {
            if (stroke.peak_pull_n) peak = std::max(peak.value_or(0.0), *stroke.peak_pull_n);
        }
        if (!peak) return;
        pulls.low = std::min(pulls.low.value_or(*peak), *peak);
        pulls.high = std::max(pulls.high.value_or(*peak), *peak);
    });
    return pulls;
}

double farthest_from_flush(const TwoCheck& check) {
    double farthest = 0.0;
    each_row(check, [&](const Beside& row) {
        for (const Position& position : row.positions) {
            farthest = std::max(farthest, std::abs(position.reading_loaded_mm));
        }
    });
    return farthest;
}

std::optional<double> least_yield_margin(const TwoCheck& check) {
    std::optional<double> least;
    each_row(check, [&](const Beside& row) {
        const auto& margin = row.travel.yield_margin;
        if (margin) least = std::min(least.value_or(*margin), *margin);
    });
    return least;
}

}  // namespace

std::vector<TargetResult> detail::judge(const Targets& targets, const TwoCheck& check) {
    const auto& low = targets.pull_low_n;
    const Pulls pulls = pulls_of(check);
    const bool high_met = !targets.pull_high_n || pulls.high <= *targets.pull_high_n;
    const bool tell_low = high_met && low && pulls.low < *low;
    // No life is worked out for two blades, and a stated target must not vanish.
    return judge_targets(targets, {.pull_n = tell_low ? pulls.low : pulls.high,
                                   .yield_margin = least_yield_margin(check),
                                   .reading_mm = farthest_from_flush(check),
                                   .openings_margin = std::nullopt});
}

}  // namespace backspring

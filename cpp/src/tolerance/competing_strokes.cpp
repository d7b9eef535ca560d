#include "competing_strokes.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace backspring {
namespace {

constexpr double kFarSigmas = 3.0;

/// A result that is the worst of the strokes'.
struct OfStrokes {
    const char* column;
    std::array<const char*, 2> strokes;
    double worse = 1.0;  ///< the larger is the worse, or with -1 the smaller
};

constexpr OfStrokes kOfStrokes[]{
    {"peak_pull_n", {"peak_pull_from_closed_n", "peak_pull_from_half_stop_n"}},
    {"peak_torque_nmm", {"peak_torque_from_closed_nmm", "peak_torque_from_half_stop_nmm"}},
    {"travel_peak_stress_mpa",
     {"travel_peak_stress_from_closed_mpa", "travel_peak_stress_from_half_stop_mpa"}},
    {"yield_margin", {"yield_margin_from_closed", "yield_margin_from_half_stop"}, -1.0},
};

const OfStrokes* of_strokes(const std::string& column) {
    const auto* found = std::ranges::find_if(
        kOfStrokes, [&](const OfStrokes& each) { return column == each.column; });
    return found == std::end(kOfStrokes) ? nullptr : found;
}

/// How the gap between two strokes spreads: what moves both alike does not close it.
struct Gap {
    double reach = 0.0;  ///< with all tolerances at their ends
    double sd = 0.0;
};

Gap gap_between(const StrokeSpread& a, const StrokeSpread& b, const std::vector<Spread>& spreads) {
    Gap gap;
    for (std::size_t k = 0; k < spreads.size(); ++k) {
        const double slope = a.slopes[k] - b.slopes[k];
        gap.reach += std::abs(slope) * farthest(spreads[k]);
        gap.sd = std::hypot(gap.sd, slope * standard_deviation(spreads[k]));
    }
    return gap;
}

bool is_whole(const StrokeSpread& stroke) {
    return std::isfinite(stroke.nominal) && std::isfinite(stroke.root_sum_square_sd);
}

}  // namespace

std::vector<std::string> detail::columns_of_strokes(const std::string& column) {
    const OfStrokes* found = of_strokes(column);
    if (!found) return {};
    return {found->strokes.begin(), found->strokes.end()};
}

LocalSpread detail::put_together(const StrokeSpread& whole,
                                 std::vector<StrokeSpread> strokes,
                                 const std::vector<Spread>& spreads) {
    LocalSpread local{.name = whole.name,
                      .nominal = whole.nominal,
                      .slopes = whole.slopes,
                      .root_sum_square_sd = whole.root_sum_square_sd,
                      .strokes = {}};
    const OfStrokes* known = of_strokes(whole.name);
    if (!known || strokes.size() < 2 || !std::ranges::all_of(strokes, is_whole)) return local;
    const double worse = known->worse;
    std::ranges::stable_sort(strokes, [&](const StrokeSpread& a, const StrokeSpread& b) {
        return worse * a.nominal > worse * b.nominal;
    });
    const double apart = worse * (strokes[0].nominal - strokes[1].nominal);
    const Gap gap = gap_between(strokes[0], strokes[1], spreads);
    if (apart > gap.reach) return local;
    local.slopes = strokes[0].slopes;
    local.root_sum_square_sd = strokes[0].root_sum_square_sd;
    if (apart <= kFarSigmas * gap.sd) {
        local.root_sum_square_sd =
            std::max(local.root_sum_square_sd, strokes[1].root_sum_square_sd);
    }
    local.strokes = std::move(strokes);
    return local;
}

std::vector<std::vector<double>> detail::directions_of(const LocalSpread& local) {
    if (local.strokes.empty()) return {local.slopes};
    std::vector<std::vector<double>> directions;
    for (const StrokeSpread& stroke : local.strokes) directions.push_back(stroke.slopes);
    std::vector<double> both = directions[0];
    for (std::size_t k = 0; k < both.size(); ++k) both[k] += directions[1][k];
    directions.push_back(std::move(both));
    return directions;
}

}  // namespace backspring

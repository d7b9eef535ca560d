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

/// How far all tolerances together can carry a result, by its slopes.
double reach(const StrokeSpread& stroke, const std::vector<Spread>& spreads) {
    double sum = 0.0;
    for (std::size_t k = 0; k < spreads.size(); ++k) {
        sum += std::abs(stroke.slopes[k]) * farthest(spreads[k]);
    }
    return sum;
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
    if (apart > reach(strokes[0], spreads) + reach(strokes[1], spreads)) return local;
    local.slopes = strokes[0].slopes;
    const double first = strokes[0].root_sum_square_sd, second = strokes[1].root_sum_square_sd;
    local.root_sum_square_sd =
        apart <= kFarSigmas * (first + second) ? std::max(first, second) : first;
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

#include "worst_figures.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

#include "backspring/check/case_solutions.hpp"
#include "backspring/design/cases.hpp"

namespace backspring {
namespace {

/// A result of a solution, and whether its sign counts when the worst of several is looked for.
struct SolvedFigure {
    const char* name;
    std::optional<double> (*of)(Solution& solution);
    bool either_way = false;
};

constexpr std::array kSolvedFigures{
    SolvedFigure{"peak_torque_nmm", &peak_torque_nmm},
    SolvedFigure{"stiffness_n_per_mm",
                 [](Solution& s) -> std::optional<double> { return s.stiffness_n_per_mm(); }},
    SolvedFigure{
        "travel_peak_stress_mpa",
        [](Solution& s) -> std::optional<double> { return s.most_stressed().peak.stress_mpa; }},
    SolvedFigure{"reading_loaded_open_mm",
                 [](Solution& s) -> std::optional<double> { return s.readings().open_mm; }, true},
    SolvedFigure{"reading_loaded_half_stop_mm",
                 [](Solution& s) { return s.readings().half_stop_mm; }, true},
    SolvedFigure{"reading_loaded_closed_mm", [](Solution& s) { return s.readings().closed_mm; },
                 true},
    SolvedFigure{"reading_unloaded_half_stop_mm",
                 [](Solution& s) { return s.unloaded_readings().half_stop_mm; }, true},
    SolvedFigure{"reading_unloaded_closed_mm",
                 [](Solution& s) { return s.unloaded_readings().closed_mm; }, true},
};

}  // namespace

Eigen::ArrayXd ColumnSides::joined(const Eigen::ArrayXd& values, double step) const {
    constexpr double agreed = 1e-3, rounding = 1e-8;
    Eigen::ArrayXd rates(values.size());
    for (Eigen::Index i = 0; i < rates.size(); ++i) {
        const double low = below[i], high = above[i];
        const double apart = agreed * std::max(std::abs(low), std::abs(high)) +
                             rounding * std::abs(values[i]) / step;
        if (std::isnan(low) || std::isnan(high)) {
            rates[i] = std::isnan(low) ? high : low;
        } else {
            rates[i] = std::abs(high - low) <= apart ? 0.5 * (low + high)
                                                     : std::numeric_limits<double>::quiet_NaN();
        }
    }
    return rates;
}

WorstFigures::WorstFigures(const Design& design) : cases_(cases(design)) {
    CaseSolutions solved(design);
    std::vector<double> values;
    for (std::size_t i = 0; i < kSolvedFigures.size(); ++i) {
        const SolvedFigure& figure = kSolvedFigures[i];
        std::optional<double> worst;
        std::size_t at = 0, place = 0;
        const auto rank = [&](double value) { return figure.either_way ? std::abs(value) : value; };
        for (Solution& solution : solved) {
            const auto value = figure.of(solution);
            if (value && (!worst || rank(*value) > rank(*worst))) {
                worst = value;
                at = place;
            }
            ++place;
        }
        if (!worst) continue;
        columns_.push_back(i);
        worst_case_.push_back(at);
        names_.emplace_back(figure.name);
        values.push_back(*worst);
    }
    values_ = Eigen::Map<Eigen::ArrayXd>(values.data(), static_cast<Eigen::Index>(values.size()));
}

Eigen::ArrayXd WorstFigures::of(Design changed) const {
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    Eigen::ArrayXd values = Eigen::ArrayXd::Constant(values_.size(), none);
    for (std::size_t place = 0; place < cases_.size(); ++place) {
        for (std::size_t k = 0; k < changed.blades.size(); ++k) {
            changed.blades[k].stands = cases_[place].blades[k].stands;
        }
        std::optional<Solution> solution;
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            if (worst_case_[i] != place) continue;
            if (!solution) solution.emplace(changed);
            const auto value = kSolvedFigures[columns_[i]].of(*solution);
            values[static_cast<Eigen::Index>(i)] = value.value_or(none);
        }
    }
    return values;
}

ColumnSides WorstFigures::sides(const std::function<Design(double)>& changed, double step) const {
    const auto side = [&](double by) -> Eigen::ArrayXd {
        Design moved = changed(by);
        if (!faults(moved).empty()) return values_ * std::numeric_limits<double>::quiet_NaN();
        return (of(std::move(moved)) - values_) / by;
    };
    return {.below = side(-step), .above = side(step)};
}

Eigen::Index WorstFigures::place(const std::string& name) const {
    return std::ranges::find(names_, name) - names_.begin();
}

}  // namespace backspring

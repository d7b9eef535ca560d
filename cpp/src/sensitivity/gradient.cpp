#include "backspring/sensitivity/gradient.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/error.hpp"
#include "backspring/design/dimension.hpp"
#include "gradient_parts.hpp"

namespace backspring {
namespace {

Eigen::Index place_of(const std::vector<std::string>& names, std::string_view name) {
    const auto found = std::find(names.begin(), names.end(), name);
    if (found == names.end()) {
        throw OutOfRange(std::string(name) + ": the design has no such result or number");
    }
    return found - names.begin();
}

/// A row that follows from another: result = value, d result = factor x d source.
void add_row(Gradient& gradient,
             const std::string& name,
             double value,
             std::string_view source,
             double factor) {
    const Eigen::Index from = place_of(gradient.figures, source), rows = gradient.value.size();
    gradient.figures.push_back(name);
    gradient.value.conservativeResize(rows + 1);
    gradient.value[rows] = value;
    for (Eigen::ArrayXXd* part : {&gradient.derivative, &gradient.below, &gradient.above}) {
        part->conservativeResize(rows + 1, Eigen::NoChange);
        part->row(rows) = factor * part->row(from);
    }
}

void add_to(Gradient& gradient, std::string_view dimension, double derivative) {
    const auto rows = gradient.derivative.rows(), column = place_of(gradient.dimensions, dimension);
    for (Eigen::ArrayXXd* part : {&gradient.derivative, &gradient.below, &gradient.above}) {
        (*part)(rows - 1, column) += derivative;
    }
}

bool has(const Gradient& gradient, std::string_view figure) {
    return std::find(gradient.figures.begin(), gradient.figures.end(), figure) !=
           gradient.figures.end();
}

double value_of(const Gradient& gradient, std::string_view figure) {
    return gradient.value[place_of(gradient.figures, figure)];
}

void add_pull_and_margin(Gradient& gradient, const Design& design) {
    if (const auto& nick = design.own().blade.nail_nick_mm;
        nick && has(gradient, "peak_torque_nmm")) {
        const double pull = value_of(gradient, "peak_torque_nmm") / *nick;
        add_row(gradient, "peak_pull_n", pull, "peak_torque_nmm", 1.0 / *nick);
        add_to(gradient, "blade.nail_nick", -pull / *nick);
    }
    if (has(gradient, "travel_peak_stress_mpa")) {
        const double stress = value_of(gradient, "travel_peak_stress_mpa");
        const double margin = design.strength.yield_mpa.value / stress;
        add_row(gradient, "yield_margin", margin, "travel_peak_stress_mpa", -margin / stress);
        add_to(gradient, "spring.yield", 1.0 / stress);
    }
}

/// Of a blade beside others: differences through the whole solution.
Gradient by_differences(const Design& design) {
    const WorstFigures figures(design);
    Gradient result;
    result.figures = figures.names();
    result.value = figures.values();
    std::vector<Dimension> all = dimensions_of(design);
    for (const Field& corner : corner_fields()) all.push_back({&corner, 0});
    std::vector<ColumnRates> columns;
    for (const Dimension& dimension : all) {
        const std::optional<double> value = dimension.value(design);
        if (!value) continue;
        const auto changed = [&](double by) {
            Design moved = design;
            dimension.set(moved, *value + by);
            return moved;
        };
        const double step = kStepBeside * std::max(1.0, std::abs(*value));
        result.dimensions.push_back(key_of(dimension, design));
        columns.push_back(joined_rates(figures.sides(changed, step), figures.values(), step));
    }
    set_columns(result, columns);
    return result;
}

/// Whether contact's own gradient holds all that the design states.
bool is_plain(const Design& design) {
    return design.blades.size() == 1 && !design.friction.bends &&
           design.own().fit.stop.place == StopPlace::unstated;
}

std::optional<double> if_there(double value) {
    return std::isnan(value) ? std::nullopt : std::optional(value);
}

}  // namespace

std::optional<double> Gradient::find(std::string_view figure, std::string_view dimension) const {
    return if_there(derivative(place_of(figures, figure), place_of(dimensions, dimension)));
}

double Gradient::of(std::string_view figure, std::string_view dimension) const {
    if (const auto found = find(figure, dimension)) return *found;
    throw OutOfRange(std::string(figure) + " by " + std::string(dimension) +
                     ": there is no derivative, for its two sides differ or there is neither");
}

SidedRates Gradient::sides(std::string_view figure, std::string_view dimension) const {
    const Eigen::Index row = place_of(figures, figure), column = place_of(dimensions, dimension);
    return {.below = if_there(below(row, column)), .above = if_there(above(row, column))};
}

Gradient gradient(const Design& design) {
    Gradient result = is_plain(design) ? exact_gradient(design) : by_differences(design);
    add_pull_and_margin(result, design);
    return result;
}

}  // namespace backspring

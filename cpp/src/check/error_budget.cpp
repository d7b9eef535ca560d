#include "backspring/check/error_budget.hpp"

#include <algorithm>
#include <cmath>

namespace backspring {
namespace {

struct Sides {
    double squares_low = 0.0, squares_high = 0.0;
    Ends worst;

    void add(const std::optional<double>& low, const std::optional<double>& high) {
        if (!low || !high) return;
        const double below = std::min(*low, 0.0), above = std::max(*high, 0.0);
        squares_low += below * below, squares_high += above * above;
        worst.low += below, worst.high += above;
    }

    [[nodiscard]] Ends root() const {
        return {squares_low > 0.0 ? -std::sqrt(squares_low) : 0.0, std::sqrt(squares_high)};
    }
};

/// The readings' band of all rows but one; of all where none is named.
Ends readings_without(const std::vector<BudgetRow>& rows, const BudgetRow* left_out) {
    Sides sides;
    for (const BudgetRow& row : rows) {
        if (&row != left_out) sides.add(row.reading_low_mm, row.reading_high_mm);
    }
    return sides.root();
}

double width(const Ends& ends) { return ends.high - ends.low; }

std::string closes_most(const std::vector<BudgetRow>& rows) {
    std::string name;
    double least = width(readings_without(rows, nullptr));
    for (const BudgetRow& row : rows) {
        if (row.settled_by == "nothing") continue;
        const double left = width(readings_without(rows, &row));
        if (left < least) least = left, name = row.effect;
    }
    return name;
}

double square(const std::optional<double>& low, const std::optional<double>& high) {
    const double farthest = std::max(std::abs(low.value_or(0.0)), std::abs(high.value_or(0.0)));
    return farthest * farthest;
}

double reading_square(const BudgetRow& row) {
    return square(row.reading_low_mm, row.reading_high_mm);
}

double pull_square(const BudgetRow& row) { return square(row.pull_low_share, row.pull_high_share); }

/// By the part of the whole, of readings or of pull, whichever a row has more of.
void greatest_first(std::vector<BudgetRow>& rows) {
    double readings = 0.0, pulls = 0.0;
    for (const BudgetRow& row : rows) readings += reading_square(row), pulls += pull_square(row);
    const auto part = [&](const BudgetRow& row) {
        return std::max(readings > 0.0 ? reading_square(row) / readings : 0.0,
                        pulls > 0.0 ? pull_square(row) / pulls : 0.0);
    };
    std::ranges::stable_sort(rows, std::ranges::greater{}, part);
}

}  // namespace

BudgetSum budget_sum(const std::vector<BudgetRow>& rows,
                     const std::optional<double>& reading_target_mm) {
    Sides readings, pulls;
    for (const BudgetRow& row : rows) {
        readings.add(row.reading_low_mm, row.reading_high_mm);
        pulls.add(row.pull_low_share, row.pull_high_share);
    }
    const Ends band = readings.root();
    return {.reading_mm = band,
            .reading_worst_mm = readings.worst,
            .pull_share = pulls.root(),
            .pull_worst_share = pulls.worst,
            .reading_target_mm = reading_target_mm,
            .beyond_target = reading_target_mm && width(band) > *reading_target_mm,
            .closes_most = closes_most(rows)};
}

ErrorBudget error_budget(const Design& design, const BudgetStated& stated) {
    Solution solution(design);
    ErrorBudget budget{.rows = contact_budget(solution), .sum = {}};
    std::vector<BudgetRow>& rows = budget.rows;
    for (BudgetRow& row : held_budget(solution, stated)) rows.push_back(std::move(row));
    if (auto row = bow_budget(solution)) rows.push_back(*std::move(row));
    if (auto row = modulus_budget(solution, stated.modulus_mpa)) rows.push_back(*std::move(row));
    rows.push_back(preload_budget(solution));
    rows.push_back(solver_budget(solution));
    std::erase_if(
        rows, [](const BudgetRow& row) { return !row.reading_high_mm && !row.pull_high_share; });
    greatest_first(rows);
    budget.sum = budget_sum(rows, design.targets.reading_mm);
    return budget;
}

}  // namespace backspring

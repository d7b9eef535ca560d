#include "backspring/check/budget.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/action/friction_couple.hpp"
#include "backspring/check/stop_band.hpp"
#include "backspring/core/root.hpp"

namespace backspring {
namespace {

/// A blade that friction keeps beside its rest.
class Sticking {
  public:
    Sticking(Solution& solution, const Contact& rest)
        : spring_(solution.design().spring),
          joint_(solution.joint()),
          friction_(solution.design().friction),
          rest_(rest),
          level_mm_(deflection_mm(joint_, rest, joint_.dial_mm)) {}

    /// Change of the reading where it would just slide, opening or closing, towards its rest; none
    /// where that is farther than the search looks.
    [[nodiscard]] std::optional<double> reading_mm(bool opening) const {
        constexpr double first_deg = 0.01, farthest_deg = 4.0;
        const double side = opening ? -1.0 : 1.0;
        const auto left = [&](double angle) { return side * torque_nmm(angle, opening); };
        double near = rest_.blade_angle_deg, at_near = left(near);
        // At a jump of torque it slides from the rest itself.
        if (at_near >= 0.0) return 0.0;
        for (double step = first_deg; step <= farthest_deg; step *= 2.0) {
            const double far = rest_.blade_angle_deg + side * step, at_far = left(far);
            if (at_far >= 0.0) {
                const double angle = find_root(left, near, far, at_near, at_far);
                return height_mm(angle, opening) - level_mm_;
            }
            near = far, at_near = at_far;
        }
        return std::nullopt;
    }

  private:
    [[nodiscard]] double torque_nmm(double angle, bool opening) const {
        const Contact contact = contact_at(joint_, angle);
        const Contact sliding = sliding_contact(spring_, joint_, contact, friction_, opening);
        const double taken = friction_torque_nmm(sliding, friction_, joint_.pivot_mm);
        return sliding.torque_nmm + (opening ? taken : -taken);
    }

    [[nodiscard]] double height_mm(double angle, bool opening) const {
        return sliding_deflection_mm(spring_, joint_, contact_at(joint_, angle), friction_, opening,
                                     joint_.dial_mm);
    }

    const Spring& spring_;
    const Joint& joint_;
    const Friction& friction_;
    const Contact& rest_;
    double level_mm_;
};

double steepest_slope(Solution& solution) {
    const auto slope = [](const Turn& turn) {
        double steepest = 0.0;
        for (const Touch& touch : turn.contact.all()) {
            steepest = std::max(steepest, std::abs(touch.slope));
        }
        return steepest;
    };
    double steepest = 0.0;
    for (LazyStroke& way : solution.ways()) {
        if (way.has_crest()) steepest = std::max(steepest, slope(way.opening_peak()));
    }
    return steepest;
}

}  // namespace

std::optional<BudgetRow> stop_budget(Solution& solution) {
    const auto band = stop_band(solution);
    if (!band) return std::nullopt;
    const bool stated = band->place != StopPlace::unstated;
    return BudgetRow{.effect = "stop",
                     .reading_low_mm = band->reading_mm.low,
                     .reading_high_mm = band->reading_mm.high,
                     .settled_by = stated ? "stop-face" : "blue-end"};
}

std::optional<BudgetRow> friction_couple_budget(Solution& solution) {
    const Design& design = solution.design();
    if (design.friction.spring == 0.0 || design.friction.bends) return std::nullopt;
    const auto hardest = hardest_turn(solution);
    if (!hardest) return std::nullopt;
    const FrictionCouple couple =
        friction_couple(design.spring, solution.joint(), hardest->contact, design.friction);
    const double share = couple.opening_nmm / hardest->opening_nmm();
    return BudgetRow{.effect = "friction-couple",
                     .pull_low_share = share,
                     .pull_high_share = share,
                     .settled_by = "friction-bending"};
}

std::optional<BudgetRow> stick_budget(Solution& solution) {
    const Friction& friction = solution.design().friction;
    if (friction.spring == 0.0 && friction.pivot == 0.0) return std::nullopt;
    BudgetRow row{.effect = "stick", .settled_by = "rock-blade"};
    for (const auto& rest : {solution.rests().half_stop, solution.rests().closed}) {
        if (!rest || rest->count == 0) continue;
        const Sticking sticking(solution, *rest);
        for (const bool opening : {true, false}) {
            const auto change = sticking.reading_mm(opening);
            if (!change) continue;
            row.reading_low_mm = std::min(row.reading_low_mm.value_or(*change), *change);
            row.reading_high_mm = std::max(row.reading_high_mm.value_or(*change), *change);
        }
    }
    if (!row.reading_low_mm) return std::nullopt;
    return row;
}

BudgetRow large_slope_budget(Solution& solution) {
    const double slope = steepest_slope(solution), share = 0.5 * slope * slope;
    BudgetRow row{.effect = "large-slopes",
                  .pull_low_share = share,
                  .pull_high_share = share,
                  .settled_by = "nothing"};
    for (const auto& rest : {solution.rests().half_stop, solution.rests().closed}) {
        if (!rest || rest->count == 0) continue;
        const double moved = deflection_mm(solution.joint(), *rest, solution.joint().dial_mm);
        row.reading_low_mm = 0.0;
        row.reading_high_mm =
            std::max(row.reading_high_mm.value_or(0.0), share * std::abs(moved) / 6.0);
    }
    return row;
}

std::optional<double> pull_share(const BudgetRow& row) {
    if (!row.pull_low_share || !row.pull_high_share) return std::nullopt;
    const double low = *row.pull_low_share, high = *row.pull_high_share;
    // As much to both sides but for rounding is told as more.
    constexpr double rounding = 1e-9;
    return std::abs(low) > (1.0 + rounding) * std::abs(high) ? low : high;
}

std::vector<BudgetRow> contact_budget(Solution& solution) {
    std::vector<BudgetRow> rows;
    for (auto* row : {&stop_budget, &friction_couple_budget, &stick_budget}) {
        if (auto found = row(solution)) rows.push_back(*std::move(found));
    }
    rows.push_back(large_slope_budget(solution));
    return rows;
}

}  // namespace backspring

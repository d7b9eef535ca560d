#include "backspring/fit/least_squares.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "backspring/core/error.hpp"
#include "bounded_step.hpp"
#include "covariance.hpp"
#include "least_squares_rules.hpp"

namespace backspring {
namespace {

constexpr double kFirstDamping = 1e-3;
constexpr double kMostDamping = 1e15;
constexpr double kLeastDamping = 1e-12;
constexpr double kWorthTaking = 1e-4;
/// Keeps the undamped step finite along a direction that nothing determines.
constexpr double kRidge = 1e-10;
constexpr int kShorterSteps = 4;

struct Problem {
    const ResidualModel& model;
    const LeastSquaresRules& rules;
    Eigen::VectorXd low, high, expected, weight, step;
};

/// Where the search stands, with the model made linear there.
struct Progress {
    Eigen::VectorXd x;
    Residuals rows;
    double sum = 0.0;
    Eigen::MatrixXd normal;
    Eigen::VectorXd gradient;
    Eigen::VectorXd scale;
};

struct Damping {
    double value = kFirstDamping;
    double growth = 2.0;
};

Eigen::VectorXd column(const std::vector<Unknown>& unknowns, double Unknown::*member) {
    Eigen::VectorXd values(static_cast<Eigen::Index>(unknowns.size()));
    std::transform(unknowns.begin(), unknowns.end(), values.begin(),
                   [&](const Unknown& each) { return each.*member; });
    return values;
}

Problem problem_of(const ResidualModel& model,
                   const std::vector<Unknown>& unknowns,
                   const LeastSquaresRules& rules) {
    return {.model = model,
            .rules = rules,
            .low = column(unknowns, &Unknown::least),
            .high = column(unknowns, &Unknown::greatest),
            .expected = column(unknowns, &Unknown::expected),
            .weight = column(unknowns, &Unknown::expected_sd).cwiseInverse(),
            .step = column(unknowns, &Unknown::step)};
}

Eigen::VectorXd within(const Problem& p, const Eigen::VectorXd& x) {
    return x.cwiseMax(p.low).cwiseMin(p.high);
}

Eigen::VectorXd deviations(const Problem& p, const Eigen::VectorXd& x) {
    return p.weight.cwiseProduct(x - p.expected);
}

/// Residuals there, or nothing where the model has no answer.
std::optional<Residuals> answer(const Problem& p, const Eigen::VectorXd& x, Eigen::Index count) {
    Residuals rows = p.model(x);
    const Eigen::MatrixXd& slopes = rows.jacobian;
    const bool fits =
        slopes.size() == 0 || (slopes.rows() == rows.values.size() && slopes.cols() == x.size());
    if (!fits || (count >= 0 && rows.values.size() != count)) {
        throw InvalidInput(std::vector<Fault>{
            {"model",
             "must always give as many residuals, with a row of derivatives for each and "
             "a column for each unknown"}});
    }
    if (!rows.values.allFinite() || !slopes.allFinite()) return std::nullopt;
    return rows;
}

/// Slope of the residuals with one unknown, from both sides where bounds and model allow.
Eigen::VectorXd slope(const Problem& p, const Progress& at, Eigen::Index i) {
    const Eigen::Index count = at.rows.values.size();
    if (p.low[i] == p.high[i]) return Eigen::VectorXd::Zero(count);
    double step = p.step[i];
    for (int tries = 0; tries < kShorterSteps; ++tries, step *= 0.25) {
        const auto beside = [&](double to) {
            Eigen::VectorXd x = at.x;
            x[i] = std::clamp(to, p.low[i], p.high[i]);
            std::optional<Residuals> rows = answer(p, x, count);
            return std::pair(rows ? x[i] : at.x[i], rows ? rows->values : at.rows.values);
        };
        const auto [up, above] = beside(at.x[i] + step);
        const auto [down, below] = beside(at.x[i] - step);
        if (up > down) return (above - below) / (up - down);
    }
    throw NoConvergence("least squares: the model has no answer around where the search stands");
}

void make_linear(const Problem& p, Progress& at) {
    Eigen::MatrixXd& slopes = at.rows.jacobian;
    if (slopes.size() == 0) {
        slopes.resize(at.rows.values.size(), at.x.size());
        for (Eigen::Index i = 0; i < at.x.size(); ++i) slopes.col(i) = slope(p, at, i);
    }
    at.normal = slopes.transpose() * slopes;
    at.normal.diagonal() += p.weight.cwiseAbs2();
    at.gradient = slopes.transpose() * at.rows.values + p.weight.cwiseProduct(deviations(p, at.x));
    at.scale = at.normal.diagonal().unaryExpr([](double d) { return d > 0.0 ? d : 1.0; });
}

std::optional<Progress> stand_at(const Problem& p, const Eigen::VectorXd& x, Eigen::Index count) {
    std::optional<Residuals> rows = answer(p, x, count);
    if (!rows) return std::nullopt;
    const double sum = rows->values.squaredNorm() + deviations(p, x).squaredNorm();
    if (!std::isfinite(sum)) return std::nullopt;
    return Progress{
        .x = x, .rows = std::move(*rows), .sum = sum, .normal = {}, .gradient = {}, .scale = {}};
}

Eigen::VectorXd damped_step(const Problem& p, const Progress& at, double damping) {
    Eigen::MatrixXd matrix = at.normal;
    matrix.diagonal() += damping * at.scale;
    return detail::bounded_step(matrix, at.gradient, p.low - at.x, p.high - at.x);
}

bool is_least(const Problem& p, const Progress& at) {
    const double enough = p.rules.tolerance * std::max(1.0, std::sqrt(at.sum));
    for (Eigen::Index i = 0; i < at.x.size(); ++i) {
        const double g = at.gradient[i];
        const bool held = (at.x[i] <= p.low[i] && g > 0.0) || (at.x[i] >= p.high[i] && g < 0.0);
        if (!held && std::abs(g) > enough * std::sqrt(at.scale[i])) return false;
    }
    const Eigen::VectorXd step = damped_step(p, at, kRidge);
    return step.dot(at.normal * step) <= enough * enough;
}

/// Takes the longest step that lowers the sum as the linear model says; false when none does.
bool advance(const Problem& p, Progress& at, Damping& damping) {
    while (damping.value < kMostDamping) {
        const Eigen::VectorXd next = within(p, at.x + damped_step(p, at, damping.value));
        const Eigen::VectorXd step = next - at.x;
        const double foreseen = -(2.0 * at.gradient.dot(step) + step.dot(at.normal * step));
        std::optional<Progress> there = stand_at(p, next, at.rows.values.size());
        const double share = there && foreseen > 0.0 ? (at.sum - there->sum) / foreseen : -1.0;
        if (share > kWorthTaking) {
            const double better = 2.0 * std::min(share, 1.0) - 1.0;
            damping.value *= std::max(1.0 / 3.0, 1.0 - better * better * better);
            damping = {.value = std::max(damping.value, kLeastDamping), .growth = 2.0};
            at = std::move(*there);
            return true;
        }
        damping.value *= damping.growth;
        damping.growth *= 2.0;
    }
    return false;
}

LeastSquares result_of(const Problem& p, const Progress& at, int iterations, bool converged) {
    LeastSquares found;
    std::vector<Eigen::Index> every, free;
    for (Eigen::Index i = 0; i < at.x.size(); ++i) {
        found.at_bound.push_back(at.x[i] <= p.low[i] || at.x[i] >= p.high[i]);
        every.push_back(i);
        if (!found.at_bound.back()) free.push_back(i);
    }
    found.x = at.x;
    found.covariance = detail::covariance(at.normal, free);
    found.covariance_released = detail::covariance(at.normal, every);
    found.residuals = at.rows.values;
    found.jacobian = at.rows.jacobian;
    found.chi_squared = at.rows.values.squaredNorm();
    found.expected_chi_squared = deviations(p, at.x).squaredNorm();
    found.iterations = iterations;
    found.converged = converged;
    return found;
}

}  // namespace

LeastSquares search_least_squares(const ResidualModel& model,
                                  const std::vector<Unknown>& unknowns,
                                  const LeastSquaresRules& rules) {
    detail::require_sense(unknowns, rules);
    const Problem p = problem_of(model, unknowns, rules);
    std::optional<Progress> at = stand_at(p, within(p, column(unknowns, &Unknown::start)), -1);
    if (!at) throw NoConvergence("least squares: the model has no answer at the start");
    Damping damping;
    int iterations = 0;
    bool converged = false;
    for (;; ++iterations) {
        make_linear(p, *at);
        converged = is_least(p, *at);
        if (converged || iterations == rules.most_iterations || !advance(p, *at, damping)) break;
    }
    return result_of(p, *at, iterations, converged);
}

LeastSquares least_squares(const ResidualModel& model,
                           const std::vector<Unknown>& unknowns,
                           const LeastSquaresRules& rules) {
    LeastSquares found = search_least_squares(model, unknowns, rules);
    if (!found.converged) {
        throw NoConvergence("least squares: not converged after " +
                            std::to_string(found.iterations) + " iterations");
    }
    return found;
}

}  // namespace backspring

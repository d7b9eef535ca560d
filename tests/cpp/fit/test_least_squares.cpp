#include <Eigen/Dense>
#include <array>
#include <cmath>
#include <limits>
#include <random>

#include "backspring/core/error.hpp"
#include "backspring/fit/least_squares.hpp"
#include "catch.hpp"

using namespace backspring;

namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

VectorXd random_vector(std::mt19937& random, Eigen::Index size) {
    std::normal_distribution<double> normal;
    return VectorXd::NullaryExpr(size, [&] { return normal(random); });
}

MatrixXd random_matrix(std::mt19937& random, Eigen::Index rows, Eigen::Index columns) {
    std::normal_distribution<double> normal;
    return MatrixXd::NullaryExpr(rows, columns, [&] { return normal(random); });
}

ResidualModel linear(const MatrixXd& a, const VectorXd& b) {
    return [=](const VectorXd& x) { return Residuals{.values = a * x - b, .jacobian = {}}; };
}

/// One unknown and one residual.
ResidualModel single(double (*residual)(double)) {
    return [=](const VectorXd& x) {
        return Residuals{.values = VectorXd::Constant(1, residual(x[0])), .jacobian = {}};
    };
}

Residuals valley(const VectorXd& x) {
    return {.values = Eigen::Vector2d(10.0 * (x[1] - x[0] * x[0]), 1.0 - x[0]), .jacobian = {}};
}

double sum_of(const MatrixXd& a, const VectorXd& b, const VectorXd& x) {
    return (a * x - b).squaredNorm();
}

/// The least of |ax - b|^2 from -1 to 1 by trying every set of held bounds.
VectorXd by_enumeration(const MatrixXd& a, const VectorXd& b) {
    VectorXd best = VectorXd::Zero(a.cols());
    const int sets = static_cast<int>(std::pow(3, a.cols()));
    for (int set = 0; set < sets; ++set) {
        VectorXd x = VectorXd::Zero(a.cols());
        std::vector<Eigen::Index> free;
        for (Eigen::Index i = 0, rest = set; i < a.cols(); ++i, rest /= 3) {
            x[i] = static_cast<double>(rest % 3) - 1.0;
            if (rest % 3 == 1) free.push_back(i);
        }
        const MatrixXd part = a(Eigen::all, free);
        if (!free.empty()) x(free) = part.colPivHouseholderQr().solve(b - a * x);
        const bool inside = x.cwiseAbs().maxCoeff() <= 1.0;
        if (inside && sum_of(a, b, x) < sum_of(a, b, best)) best = x;
    }
    return best;
}

}  // namespace

TEST_CASE("a linear model gives the conjugate normal posterior", "[fit][closed form]") {
    // Precision of the posterior: A'A + S^-1; its mean: cov (A'b + S^-1 m). Any text on Bayesian
    // linear regression with known variance.
    std::mt19937 random(1);
    const MatrixXd a = random_matrix(random, 7, 4);
    const VectorXd b = random_vector(random, 7), mean = random_vector(random, 4);
    const VectorXd sd = random_vector(random, 4).cwiseAbs().array() + 0.1;
    std::vector<Unknown> unknowns;
    for (Eigen::Index i = 0; i < 4; ++i) {
        unknowns.push_back({.start = 3.0, .expected = mean[i], .expected_sd = sd[i]});
    }
    const LeastSquares found = least_squares(linear(a, b), unknowns);
    const MatrixXd prior = sd.cwiseAbs2().cwiseInverse().asDiagonal();
    const MatrixXd covariance = (a.transpose() * a + prior).inverse();
    const VectorXd x = covariance * (a.transpose() * b + prior * mean);
    // Differences over 1e-6 leave about 1e-10 of each slope.
    CHECK((found.x - x).norm() < 1e-6);
    CHECK((found.covariance - covariance).norm() < 1e-6 * covariance.norm());
    CHECK((found.covariance_released - found.covariance).norm() == 0.0);
    CHECK_THAT(found.chi_squared, WithinRel(sum_of(a, b, x), 1e-6));
    CHECK_THAT(found.expected_chi_squared,
               WithinRel((x - mean).cwiseQuotient(sd).squaredNorm(), 1e-5));
    CHECK((found.residuals - (a * found.x - b)).norm() == 0.0);
    CHECK(found.converged);
}

TEST_CASE("within bounds a linear model's least is that of every set of held bounds tried",
          "[fit][oracle]") {
    std::mt19937 random(2);
    int at_bounds = 0;
    for (int round = 0; round < 60; ++round) {
        const MatrixXd a = random_matrix(random, 6, 4);
        const VectorXd b = 3.0 * random_vector(random, 6);
        const std::vector<Unknown> unknowns(4, {.start = 0.3, .least = -1.0, .greatest = 1.0});
        const LeastSquares found = least_squares(linear(a, b), unknowns);
        const VectorXd best = by_enumeration(a, b);
        INFO("round " << round);
        CHECK((found.x - best).norm() < 1e-5);
        for (Eigen::Index i = 0; i < 4; ++i) {
            const bool held = found.at_bound[static_cast<std::size_t>(i)];
            CHECK(held == (std::abs(best[i]) == 1.0));
            CHECK((found.covariance(i, i) == 0.0) == held);
            CHECK(found.covariance_released(i, i) > 0.0);
            at_bounds += held ? 1 : 0;
        }
    }
    CHECK(at_bounds > 60);
}

TEST_CASE("a curved valley is followed to its end, or to the bound across it",
          "[fit][closed form]") {
    const std::vector<Unknown> open{{.start = -1.2}, {.start = 1.0}};
    const LeastSquares found = least_squares(valley, open);
    CHECK((found.x - Eigen::Vector2d(1.0, 1.0)).norm() < 1e-6);
    CHECK(found.iterations < 40);
    const std::vector<Unknown> half{{.start = -1.2, .greatest = 0.5}, {.start = 1.0}};
    const LeastSquares bounded = least_squares(valley, half);
    CHECK(bounded.x[0] == 0.5);
    CHECK_THAT(bounded.x[1], WithinAbs(0.25, 1e-6));
    CHECK(bounded.at_bound == std::vector<bool>{true, false});
}

TEST_CASE("where undamped steps go to and fro for ever it comes to the end", "[fit][closed form]") {
    // arctan x: the undamped step from a lands on -a where 2a = (1 + a^2) arctan a.
    const double a = 1.3917452002707347;
    CHECK_THAT(a - (1.0 + a * a) * std::atan(a), WithinRel(-a, 1e-12));
    for (const double start : {a, -a, 3.0, 50.0}) {
        const LeastSquares found =
            least_squares(single([](double x) { return std::atan(x); }), {{.start = start}});
        CHECK_THAT(found.x[0], WithinAbs(0.0, 1e-6));
    }
}

TEST_CASE("a step to where the model has no answer is shortened", "[fit][property]") {
    // ln x: the undamped step from 3 lands on 3 - 3 ln 3 < 0.
    const ResidualModel log = single([](double x) { return x > 0.0 ? std::log(x) : kNone; });
    CHECK_THAT(least_squares(log, {{.start = 3.0}}).x[0], WithinAbs(1.0, 1e-6));
    // The least is where the answers end: differences are taken from one side.
    const ResidualModel edge = single([](double x) { return x >= 0.0 ? 1.0 + x : kNone; });
    const LeastSquares found = least_squares(edge, {{.start = 0.0, .least = 0.0}});
    CHECK(found.x[0] == 0.0);
    CHECK_THAT(found.jacobian(0, 0), WithinRel(1.0, 1e-6));
    CHECK_THROWS_AS(least_squares(log, {{.start = -1.0}}), NoConvergence);
    const ResidualModel island = single([](double x) { return x == 2.0 ? 1.0 : kNone; });
    CHECK_THROWS_WITH(least_squares(island, {{.start = 2.0}}),
                      ContainsSubstring("no answer around"));
}

TEST_CASE("what nothing determines has an infinite variance, what is expected settles it",
          "[fit][closed form]") {
    const MatrixXd a{{1.0, 1.0, 0.0}, {0.0, 0.0, 2.0}};
    const VectorXd b = Eigen::Vector2d(1.0, 3.0);
    std::vector<Unknown> unknowns(3);
    const LeastSquares loose = least_squares(linear(a, b), unknowns);
    CHECK_THAT(loose.x[0] + loose.x[1], WithinAbs(1.0, 1e-6));
    CHECK(std::isinf(loose.covariance(0, 0)));
    CHECK(std::isinf(loose.covariance(1, 1)));
    CHECK_THAT(loose.covariance(2, 2), WithinRel(0.25, 1e-6));
    unknowns[1] = {.expected = 0.2, .expected_sd = 0.5};
    const LeastSquares known = least_squares(linear(a, b), unknowns);
    CHECK_THAT(known.x[0], WithinAbs(0.8, 1e-6));
    CHECK_THAT(known.covariance(0, 0), WithinRel(1.0 + 0.25, 1e-6));
}

TEST_CASE("the model's own derivatives and differences end at the same place", "[fit][property]") {
    const ResidualModel with_slopes = [](const VectorXd& x) {
        Residuals rows = valley(x);
        rows.jacobian = MatrixXd{{-20.0 * x[0], 10.0}, {-1.0, 0.0}};
        return rows;
    };
    const std::vector<Unknown> unknowns{{.start = -1.2, .greatest = 0.7}, {.start = 1.0}};
    const LeastSquares mine = least_squares(with_slopes, unknowns);
    const LeastSquares theirs = least_squares(valley, unknowns);
    CHECK((mine.x - theirs.x).norm() < 1e-6);
    CHECK((mine.covariance - theirs.covariance).norm() < 1e-6);
}

TEST_CASE("what has not converged is never an answer", "[fit][errors]") {
    const std::vector<Unknown> open{{.start = -1.2}, {.start = 1.0}};
    const LeastSquaresRules few{.most_iterations = 2};
    CHECK_FALSE(search_least_squares(valley, open, few).converged);
    CHECK_THROWS_WITH(least_squares(valley, open, few),
                      ContainsSubstring("not converged after 2 iterations"));
}

TEST_CASE("a question that makes no sense is refused with every fault", "[fit][errors]") {
    const ResidualModel any = single([](double x) { return x; });
    const std::vector<Unknown> wrong{
        {.least = 1.0, .greatest = 0.0}, {.start = kNone}, {.step = 0.0}, {.expected_sd = 0.0}};
    try {
        (void)least_squares(any, wrong, {.most_iterations = 0, .tolerance = 1.0});
        FAIL("accepted");
    } catch (const InvalidInput& error) {
        CHECK(error.faults().size() == 6);
        CHECK(error.faults()[2].key == "unknowns[0]");
    }
    const ResidualModel changing = [](const VectorXd& x) {
        return Residuals{.values = VectorXd::Ones(x[0] == 0.0 ? 1 : 2), .jacobian = {}};
    };
    CHECK_THROWS_AS(least_squares(changing, {Unknown{}}), InvalidInput);
}

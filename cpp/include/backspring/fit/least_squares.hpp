#pragma once

#include <Eigen/Core>
#include <functional>
#include <limits>
#include <vector>

namespace backspring {

/// One unknown of a fit by least squares, in any unit.
struct Unknown {
    double start = 0.0;                                            ///< where the search begins
    double least = -std::numeric_limits<double>::infinity();       ///< lower bound
    double greatest = std::numeric_limits<double>::infinity();     ///< upper bound
    double expected = 0.0;                                         ///< before anything is measured
    double expected_sd = std::numeric_limits<double>::infinity();  ///< infinite: nothing expected
    double step = 1e-6;  ///< of central differences, where the model gives no derivatives
};

/// What a model answers: residuals, each divided by its observation's standard deviation.
struct Residuals {
    Eigen::VectorXd values;    ///< (model - observed)/sd; not finite where there is no answer
    Eigen::MatrixXd jacobian;  ///< rows: residuals, columns: unknowns; empty: by differences
};

/// A model of the observations at given unknowns.
using ResidualModel = std::function<Residuals(const Eigen::VectorXd&)>;

/// When a search by least squares ends.
struct LeastSquaresRules {
    int most_iterations = 100;  ///< steps taken, 1 to 100 000
    double tolerance = 1e-6;    ///< of step and gradient, in standard deviations, 1e-12 to 1e-2
};

/// What observations and expectations tell about the unknowns.
struct LeastSquares {
    Eigen::VectorXd x;                    ///< most likely values, within their bounds
    Eigen::MatrixXd covariance;           ///< with every unknown at a bound held there
    Eigen::MatrixXd covariance_released;  ///< as if there were no bounds
    std::vector<bool> at_bound;           ///< which unknowns stand at a bound
    Eigen::VectorXd residuals;            ///< of the observations, each in its own deviations
    Eigen::MatrixXd jacobian;             ///< of these residuals
    double chi_squared = 0.0;             ///< sum of their squares
    double expected_chi_squared = 0.0;    ///< sum of squares of (x - expected)/expected_sd
    int iterations = 0;                   ///< steps taken
    bool converged = false;               ///< whether step and gradient are within tolerance
};

/// Bounded weighted least squares, with what is expected of the unknowns as further observations.
///
/// Levenberg's and Marquardt's damped steps, each the exact least of the linear model within the
/// bounds, so that no bound is kept by the model. Damping grows until a step lowers the sum of
/// squares; where the model has no answer the step is shortened in the same way. Converged: the
/// undamped step is shorter than the tolerance in the metric of the normal matrix, and so is the
/// gradient that no bound holds. The covariance is the inverse of the weighted normal matrix; an
/// unknown that nothing determines has an infinite variance, and no covariance is told of it.
///
/// @throws InvalidInput   bounds the wrong way round, a start or step that is no number, or a model
///                        whose number of residuals changes
/// @throws NoConvergence  the model has no answer at the start, or none around it
/// @source  D. W. Marquardt, J. SIAM 11 (1963) 431; damping after H. B. Nielsen, IMM-REP-1999-05;
///          steps within bounds by an active set, Nocedal and Wright, Numerical Optimization 16.5
[[nodiscard]] LeastSquares search_least_squares(const ResidualModel& model,
                                                const std::vector<Unknown>& unknowns,
                                                const LeastSquaresRules& rules = {});

/// search_least_squares() that has converged.
///
/// @throws InvalidInput   as search_least_squares()
/// @throws NoConvergence  as search_least_squares(), and when it has not converged: never an answer
[[nodiscard]] LeastSquares least_squares(const ResidualModel& model,
                                         const std::vector<Unknown>& unknowns,
                                         const LeastSquaresRules& rules = {});

}  // namespace backspring

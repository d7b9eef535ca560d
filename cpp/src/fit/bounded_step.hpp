#pragma once

#include <Eigen/Core>

namespace backspring::detail {

/// The step s from low to high that makes g's + s'As/2 least.
///
/// @param matrix     A, symmetric and positive definite
/// @param low, high  limits of the step, low <= 0 <= high
/// @source  active set, Nocedal and Wright, Numerical Optimization, algorithm 16.3
[[nodiscard]] Eigen::VectorXd bounded_step(const Eigen::MatrixXd& matrix,
                                           const Eigen::VectorXd& gradient,
                                           const Eigen::VectorXd& low,
                                           const Eigen::VectorXd& high);

}  // namespace backspring::detail

#pragma once

#include <Eigen/Core>
#include <vector>

namespace backspring::detail {

/// Inverse of a normal matrix over the free unknowns, nothing for those that are held.
///
/// An unknown that nothing determines has an infinite variance and no covariance with others.
[[nodiscard]] Eigen::MatrixXd covariance(const Eigen::MatrixXd& normal,
                                         const std::vector<Eigen::Index>& free);

}  // namespace backspring::detail

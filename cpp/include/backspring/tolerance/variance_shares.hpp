#pragma once

#include <Eigen/Core>
#include <optional>
#include <vector>

namespace backspring {

/// How much of the variance of a result one input brings.
struct VarianceShare {
    double first = 0.0;  ///< by itself
    double total = 0.0;  ///< with all it does together with others
};

/// Shares of variance by Saltelli's scheme: two samples, and the first with one input at a time
/// from the second.
///
/// first_k = mean(f_B (f_AB,k - f_A)) / V; total_k = mean((f_A - f_AB,k)^2) / (2 V). Rows in which
/// any value is NaN are left out.
///
/// @param a      results of the first sample
/// @param b      results of the second
/// @param mixed  results of the first with input k from the second, one column each
/// @returns      nothing when fewer than two rows are whole or nothing varies
/// @source Saltelli et al., Comput. Phys. Commun. 181 (2010), 259-270; total after Jansen (1999)
[[nodiscard]] std::optional<std::vector<VarianceShare>> variance_shares(
    const Eigen::ArrayXd& a, const Eigen::ArrayXd& b, const std::vector<Eigen::ArrayXd>& mixed);

}  // namespace backspring

#include "covariance.hpp"

#include <Eigen/Eigenvalues>
#include <limits>

namespace backspring::detail {
namespace {

/// Eigenvalues of a matrix scaled to a diagonal of ones that are as good as nothing.
constexpr double kUndetermined = 1e-12;

/// Inverse over the determined directions; `loose` tells each unknown's share in the others.
Eigen::MatrixXd determined_inverse(const Eigen::MatrixXd& matrix, Eigen::VectorXd& loose) {
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> parts(matrix);
    const Eigen::MatrixXd& axes = parts.eigenvectors();
    Eigen::VectorXd inverted = parts.eigenvalues();
    Eigen::VectorXd lost = Eigen::VectorXd::Zero(inverted.size());
    for (Eigen::Index i = 0; i < inverted.size(); ++i) {
        const bool determined = inverted[i] > kUndetermined;
        inverted[i] = determined ? 1.0 / inverted[i] : 0.0;
        lost[i] = determined ? 0.0 : 1.0;
    }
    loose = axes.cwiseAbs2() * lost;
    return axes * inverted.asDiagonal() * axes.transpose();
}

}  // namespace

Eigen::MatrixXd covariance(const Eigen::MatrixXd& normal, const std::vector<Eigen::Index>& free) {
    Eigen::MatrixXd whole = Eigen::MatrixXd::Zero(normal.rows(), normal.cols());
    if (free.empty()) return whole;
    const Eigen::MatrixXd part = normal(free, free);
    const Eigen::VectorXd size =
        part.diagonal().unaryExpr([](double d) { return d > 0.0 ? 1.0 / std::sqrt(d) : 1.0; });
    Eigen::VectorXd loose;
    const Eigen::MatrixXd inverse =
        determined_inverse(size.asDiagonal() * part * size.asDiagonal(), loose);
    whole(free, free) = size.asDiagonal() * inverse * size.asDiagonal();
    for (std::size_t i = 0; i < free.size(); ++i) {
        if (loose[static_cast<Eigen::Index>(i)] <= kUndetermined) continue;
        whole.row(free[i]).setZero();
        whole.col(free[i]).setZero();
        whole(free[i], free[i]) = std::numeric_limits<double>::infinity();
    }
    return whole;
}

}  // namespace backspring::detail

#pragma once

#include <Eigen/LU>
#include <array>
#include <cstddef>

namespace backspring::detail {

/// Square systems of a few unknowns, solved without memory of their own.
template <std::size_t most>
class SmallLu {
  public:
    using Column = std::array<double, most>;
    using Table = std::array<Column, most>;  ///< row by row

    /// @returns  false where it has no answer
    [[nodiscard]] bool factor(const Table& rows, std::size_t n) {
        const auto size = static_cast<Eigen::Index>(n);
        lu_.compute(Eigen::Map<const Whole>(rows[0].data()).topLeftCorner(size, size));
        return (lu_.matrixLU().diagonal().array().abs() > 0.0).all();
    }

    [[nodiscard]] Column solve(const Column& right) const {
        Column x{};
        Eigen::Map<Values>(x.data(), lu_.rows()) =
            lu_.solve(Eigen::Map<const Values>(right.data(), lu_.rows()));
        return x;
    }

  private:
    static constexpr int kMost = static_cast<int>(most);
    using Whole = Eigen::Matrix<double, kMost, kMost, Eigen::RowMajor>;
    using Square = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, kMost, kMost>;
    using Values = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, kMost, 1>;

    Eigen::PartialPivLU<Square> lu_;
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

namespace backspring::detail {

/// Square systems of a few unknowns, solved in place by elimination with pivots: of so few a
/// library's blocks and packing cost several times the numbers themselves.
template <std::size_t most>
class SmallLu {
  public:
    using Column = std::array<double, most>;
    using Table = std::array<Column, most>;  ///< row by row

    /// @returns  false where it has no answer
    [[nodiscard]] bool factor(const Table& rows, std::size_t n) {
        n_ = n;
        for (std::size_t i = 0; i < n; ++i) {
            order_[i] = i;
            for (std::size_t j = 0; j < n; ++j) lu_[i][j] = rows[i][j];
        }
        for (std::size_t k = 0; k < n; ++k) {
            std::size_t pivot = k;
            for (std::size_t i = k + 1; i < n; ++i) {
                if (std::abs(lu_[i][k]) > std::abs(lu_[pivot][k])) pivot = i;
            }
            if (!(std::abs(lu_[pivot][k]) > 0.0)) return false;
            std::swap(lu_[k], lu_[pivot]);
            std::swap(order_[k], order_[pivot]);
            for (std::size_t i = k + 1; i < n; ++i) eliminate(i, k);
        }
        return true;
    }

    [[nodiscard]] Column solve(const Column& right) const {
        Column x{};
        for (std::size_t i = 0; i < n_; ++i) {
            x[i] = right[order_[i]];
            for (std::size_t j = 0; j < i; ++j) x[i] -= lu_[i][j] * x[j];
        }
        for (std::size_t i = n_; i-- > 0;) {
            for (std::size_t j = i + 1; j < n_; ++j) x[i] -= lu_[i][j] * x[j];
            x[i] /= lu_[i][i];
        }
        return x;
    }

  private:
    void eliminate(std::size_t i, std::size_t k) {
        const double share = lu_[i][k] /= lu_[k][k];
        for (std::size_t j = k + 1; j < n_; ++j) lu_[i][j] -= share * lu_[k][j];
    }

    Table lu_;
    std::array<std::size_t, most> order_;
    std::size_t n_ = 0;
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

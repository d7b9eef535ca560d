#pragma once

#include <Eigen/Core>
#include <functional>
#include <string>
#include <vector>

#include "backspring/design/design.hpp"

namespace backspring::detail {

/// Rates of change as a number falls and as it rises; NaN where there is none.
struct ColumnSides {
    Eigen::ArrayXd below, above;

    /// One rate for both: their mean where they agree, the one there is, and NaN where they differ.
    ///
    /// @param values  of the results, against whose rounding rates agree
    [[nodiscard]] Eigen::ArrayXd joined(const Eigen::ArrayXd& values, double step) const;
};

/// Results of the own blade beside others, each of the case in which it is worst.
///
/// How they answer to the design is differenced through whole solutions, of those cases alone.
class WorstFigures {
  public:
    /// @throws InvalidInput  with every broken rule
    explicit WorstFigures(const Design& design);

    [[nodiscard]] const std::vector<std::string>& names() const { return names_; }
    [[nodiscard]] const Eigen::ArrayXd& values() const { return values_; }

    /// Differences of all of them to either side; NaN where a rule stands in the way or a result is
    /// lost.
    ///
    /// @param changed  the design with a number off by so much
    [[nodiscard]] ColumnSides sides(const std::function<Design(double)>& changed,
                                    double step) const;

    /// The place of a result among them; they have every one that a single blade has.
    [[nodiscard]] Eigen::Index place(const std::string& name) const;

  private:
    [[nodiscard]] Eigen::ArrayXd of(Design changed) const;

    std::vector<Design> cases_;
    std::vector<std::size_t> columns_;     ///< which result each is
    std::vector<std::size_t> worst_case_;  ///< a place in the cases for each
    std::vector<std::string> names_;
    Eigen::ArrayXd values_;
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}

#pragma once

#include <Eigen/Core>
#include <functional>
#include <string>
#include <vector>

#include "backspring/design/design.hpp"

namespace backspring::detail {

/// Results of the own blade beside others, each of the case in which it is worst.
///
/// How they answer to the design is differenced through whole solutions, of those cases alone.
class WorstFigures {
  public:
    /// @throws InvalidInput  with every broken rule
    explicit WorstFigures(const Design& design);

    [[nodiscard]] const std::vector<std::string>& names() const { return names_; }
    [[nodiscard]] const Eigen::ArrayXd& values() const { return values_; }

    /// Central differences of all of them; one-sided where a rule stands in the way on one side,
    /// NaN where on both or where a result is lost.
    ///
    /// @param changed  the design with a number off by so much
    [[nodiscard]] Eigen::ArrayXd rate(const std::function<Design(double)>& changed,
                                      double step) const;

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

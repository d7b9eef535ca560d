#pragma once

#include <cmath>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "backspring/backspring.hpp"

namespace fuzz {

/// An answer that no question may get. Not one of the library's errors, so that nothing catches it.
class WrongAnswer : public std::logic_error {
  public:
    using std::logic_error::logic_error;
};

inline void require(bool holds, const std::string& what) {
    if (!holds) throw WrongAnswer(what);
}

/// Every number of an answer is a number: none is endless, none is "not a number".
class Figures {
  public:
    explicit Figures(std::string of) : of_(std::move(of)) {}

    void hold(double value, int line = __builtin_LINE()) const {
        if (std::isfinite(value)) return;
        throw WrongAnswer(of_ + ": " + std::to_string(value) + ", held at line " +
                          std::to_string(line));
    }
    void hold(const std::optional<double>& value, int line = __builtin_LINE()) const {
        if (value) hold(*value, line);
    }
    void hold(const std::vector<double>& values, int line = __builtin_LINE()) const {
        for (const double value : values) hold(value, line);
    }
    template <class Derived>
    void hold(const Eigen::DenseBase<Derived>& values, int line = __builtin_LINE()) const {
        for (Eigen::Index i = 0; i < values.size(); ++i) hold(values.derived().data()[i], line);
    }

  private:
    std::string of_;
};

void hold(const backspring::Check& check);
void hold(const backspring::Design& design);
void hold(const backspring::Gradient& gradient);
void hold(const backspring::GrindRow& row);
void hold(const backspring::ErrorBudget& budget);
void hold(const backspring::Feel& feel);
void hold(const backspring::FitPlan& plan);
void hold(const backspring::Readings& readings);
void hold(const backspring::SpringLoading& loading);
void hold(const backspring::PlasticSet& set);
void hold(const backspring::Tolerance& tolerance);
void hold(const backspring::WholeBack& back);
void hold(const std::vector<backspring::Notice>& notices);

}  // namespace fuzz

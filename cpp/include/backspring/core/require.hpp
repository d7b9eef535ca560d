#pragma once

#include <cmath>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "backspring/core/error.hpp"

namespace backspring {

/// A number as messages print it, with its unit when it has one.
[[nodiscard]] std::string with_unit(double value, std::string_view unit);

/// The quantity that the core measures in a unit; a ratio where there is none.
[[nodiscard]] Quantity quantity_in(std::string_view unit);

/// Collects broken rules so that all are told at once.
class Requirements {
  public:
    /// Records a broken rule whose text says all.
    void fail(std::string_view key, std::string message);

    /// Records a broken rule.
    void fail(Fault fault) { faults_.push_back(std::move(fault)); }

    /// Records a broken rule unless it holds; the message is only made when it is needed.
    template <class Message>
    bool require(bool holds, std::string_view key, Message message) {
        if (!holds) fail(key, message());
        return holds;
    }

    /// Records a rule as broken by these values unless it holds.
    bool require(bool holds,
                 std::string_view key,
                 const RuleText& rule,
                 Quantity quantity,
                 std::initializer_list<double> limits,
                 std::initializer_list<double> values);

    /// The value is a finite number from `low` to `high`; greater than `low` when `open_low`.
    ///
    /// Returns whether it is, so that rules that build on it can be left out.
    bool in_range(std::string_view key,
                  double value,
                  double low,
                  double high,
                  Quantity quantity,
                  bool open_low = false);
    bool in_range(std::string_view key,
                  double value,
                  double low,
                  double high,
                  std::string_view unit,
                  bool open_low = false) {
        // What holds needs no unit.
        if ((open_low ? value > low : value >= low) && value <= high && std::isfinite(value)) {
            return true;
        }
        return in_range(key, value, low, high, quantity_in(unit), open_low);
    }

    /// The value is finite, greater than 0 and not above `high`.
    bool positive(std::string_view key, double value, double high, std::string_view unit) {
        return in_range(key, value, 0.0, high, unit, true);
    }

    [[nodiscard]] const std::vector<Fault>& faults() const noexcept { return faults_; }

    /// Whether no rule is broken of a key, or of any key that starts with it and a point.
    [[nodiscard]] bool sound(std::string_view key) const;

    /// Throws InvalidInput with everything collected, if anything was.
    void throw_if_any() const;

  private:
    std::vector<Fault> faults_;
};

}  // namespace backspring

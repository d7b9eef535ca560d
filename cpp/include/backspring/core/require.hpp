#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "backspring/core/error.hpp"

namespace backspring {

/// A number as messages print it, with its unit when it has one.
[[nodiscard]] std::string with_unit(double value, std::string_view unit);

/// Collects broken rules so that all are told at once.
class Requirements {
  public:
    /// Records a broken rule.
    void fail(std::string_view key, std::string message);

    /// Records a broken rule unless it holds; the message is only made when it is needed.
    template <class Message>
    bool require(bool holds, std::string_view key, Message message) {
        if (!holds) fail(key, message());
        return holds;
    }

    /// The value is a finite number from `low` to `high`; greater than `low` when `open_low`.
    ///
    /// Returns whether it is, so that rules that build on it can be left out.
    bool in_range(std::string_view key,
                  double value,
                  double low,
                  double high,
                  std::string_view unit,
                  bool open_low = false);

    /// The value is finite, greater than 0 and not above `high`.
    bool positive(std::string_view key, double value, double high, std::string_view unit);

    [[nodiscard]] const std::vector<Fault>& faults() const noexcept { return faults_; }

    /// Throws InvalidInput with everything collected, if anything was.
    void throw_if_any() const;

  private:
    std::vector<Fault> faults_;
};

}  // namespace backspring

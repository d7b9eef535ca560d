#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "backspring/core/fault.hpp"

namespace backspring {

/// Base of all errors the library throws.
class Error : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

/// Input that breaks one or more rules; carries them all.
class InvalidInput : public Error {
  public:
    explicit InvalidInput(std::vector<Fault> faults);

    /// Every broken rule, in the order of the design file.
    [[nodiscard]] const std::vector<Fault>& faults() const noexcept { return faults_; }

  private:
    std::vector<Fault> faults_;
};

/// A question outside the range that data or model cover.
class OutOfRange : public Error {
  public:
    using Error::Error;
};

/// A search that ended without a solution.
class NoConvergence : public Error {
  public:
    using Error::Error;
};

}  // namespace backspring

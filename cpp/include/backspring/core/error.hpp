#pragma once

#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "backspring/core/fault.hpp"
#include "backspring/core/notice.hpp"

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

/// An error that carries what was found as code, numbers and names; what() is short.
class Explained : public Error {
  public:
    using Error::Error;
    explicit Explained(Notice notice);

    /// What was found; none where a text is all there is.
    [[nodiscard]] const std::optional<Notice>& notice() const noexcept { return notice_; }

  private:
    std::optional<Notice> notice_;
};

/// A question outside the range that data or model cover.
class OutOfRange : public Explained {
  public:
    using Explained::Explained;
};

/// A search that ended without a solution.
class NoConvergence : public Explained {
  public:
    using Explained::Explained;
};

}  // namespace backspring

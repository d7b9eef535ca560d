#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "backspring/core/quantity.hpp"

namespace backspring {

/// A rule that values must keep: a name for programs, and what it says.
///
/// The text holds places {0}, {1}... for numbers, limits before values, so that whoever shows it
/// chooses their unit.
struct RuleText {
    std::string_view name;  ///< as "at_most"
    std::string_view text;  ///< as "must be at most {0}, got {1}"
};

namespace rule {

inline constexpr RuleText kFinite{"finite", "must be a finite number, got {0}"};
inline constexpr RuleText kGreaterThan{"greater_than", "must be greater than {0}, got {1}"};
inline constexpr RuleText kAtLeast{"at_least", "must be at least {0}, got {1}"};
inline constexpr RuleText kAtMost{"at_most", "must be at most {0}, got {1}"};

}  // namespace rule

/// One broken rule: which key, which rule, its limits and the values that break it.
struct Fault {
    std::string key;                      ///< name of the value in a design file: "spring.width"
    std::string text;                     ///< the rule's text, places of numbers left open
    std::string rule = "stated";          ///< the rule's name; "stated" where the text says all
    std::vector<double> limits{};         ///< what the rule allows, in the core's units
    std::vector<double> values{};         ///< what was given, in the core's units
    Quantity quantity = Quantity::ratio;  ///< of limits and values
};

/// A rule broken by the values of a key.
[[nodiscard]] Fault broken(std::string_view key,
                           const RuleText& rule,
                           Quantity quantity,
                           std::vector<double> limits,
                           std::vector<double> values);

/// What a fault says in the core's units: "must be greater than 0 mm, got -2.3 mm".
[[nodiscard]] std::string message(const Fault& fault);

}  // namespace backspring

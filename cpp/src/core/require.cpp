#include "backspring/core/require.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace backspring {

std::string with_unit(double value, std::string_view unit) {
    const std::string digits = with_unit(value, Quantity::ratio);
    return unit.empty() ? digits : digits + " " + std::string(unit);
}

Quantity quantity_in(std::string_view unit) {
    if (unit.empty()) return Quantity::ratio;
    for (int i = 0; i <= static_cast<int>(Quantity::angular_speed); ++i) {
        if (unit_of(static_cast<Quantity>(i)) == unit) return static_cast<Quantity>(i);
    }
    throw Error("no quantity is measured in " + std::string(unit));
}

void Requirements::fail(std::string_view key, std::string message) {
    faults_.push_back({.key = std::string(key), .text = std::move(message)});
}

bool Requirements::require(bool holds,
                           std::string_view key,
                           const RuleText& rule,
                           Quantity quantity,
                           std::initializer_list<double> limits,
                           std::initializer_list<double> values) {
    if (!holds) fail(broken(key, rule, quantity, limits, values));
    return holds;
}

bool Requirements::in_range(
    std::string_view key, double value, double low, double high, Quantity quantity, bool open_low) {
    if ((open_low ? value > low : value >= low) && value <= high && std::isfinite(value)) {
        return true;
    }
    if (!std::isfinite(value)) return require(false, key, rule::kFinite, quantity, {}, {value});
    const RuleText& least = open_low ? rule::kGreaterThan : rule::kAtLeast;
    const bool below = open_low ? value <= low : value < low;
    return require(!below, key, least, quantity, {low}, {value}) &&
           require(value <= high, key, rule::kAtMost, quantity, {high}, {value});
}

bool Requirements::sound(std::string_view key) const {
    return std::none_of(faults_.begin(), faults_.end(), [&](const Fault& fault) {
        return fault.key.starts_with(key) &&
               (fault.key.size() == key.size() || fault.key[key.size()] == '.');
    });
}

void Requirements::throw_if_any() const {
    if (!faults_.empty()) throw InvalidInput(faults_);
}

}  // namespace backspring

#include "backspring/core/require.hpp"

#include <cmath>
#include <cstdio>
#include <utility>

namespace backspring {

std::string with_unit(double value, std::string_view unit) {
    char digits[32];
    std::snprintf(digits, sizeof digits, "%.7g", value);
    std::string text = digits;
    if (!unit.empty()) text.append(" ").append(unit);
    return text;
}

void Requirements::fail(std::string_view key, std::string message) {
    faults_.push_back({std::string(key), std::move(message)});
}

bool Requirements::in_range(std::string_view key,
                            double value,
                            double low,
                            double high,
                            std::string_view unit,
                            bool open_low) {
    std::string rule;
    if (!std::isfinite(value)) {
        rule = "must be a finite number";
    } else if (open_low && value <= low) {
        rule = "must be greater than " + with_unit(low, unit);
    } else if (value < low) {
        rule = "must be at least " + with_unit(low, unit);
    } else if (value > high) {
        rule = "must be at most " + with_unit(high, unit);
    } else {
        return true;
    }
    fail(key, rule + ", got " + with_unit(value, unit));
    return false;
}

bool Requirements::positive(std::string_view key,
                            double value,
                            double high,
                            std::string_view unit) {
    return in_range(key, value, 0.0, high, unit, true);
}

void Requirements::throw_if_any() const {
    if (!faults_.empty()) throw InvalidInput(faults_);
}

}  // namespace backspring

#include "backspring/core/fault.hpp"

#include <utility>

namespace backspring {

Fault broken(std::string_view key,
             const RuleText& rule,
             Quantity quantity,
             std::vector<double> limits,
             std::vector<double> values) {
    return {.key = std::string(key),
            .text = std::string(rule.text),
            .rule = std::string(rule.name),
            .limits = std::move(limits),
            .values = std::move(values),
            .quantity = quantity};
}

std::string message(const Fault& fault) {
    std::vector<double> numbers = fault.limits;
    numbers.insert(numbers.end(), fault.values.begin(), fault.values.end());
    std::string text = fault.text;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        const std::string place = std::string("{").append(std::to_string(i)).append("}");
        if (const std::size_t at = text.find(place); at != std::string::npos) {
            text.replace(at, place.size(), with_unit(numbers[i], fault.quantity));
        }
    }
    return text;
}

}  // namespace backspring

#include "backspring/core/quantity.hpp"

#include <array>
#include <charconv>

namespace backspring {

std::string_view unit_of(Quantity quantity) {
    constexpr std::array<std::string_view, 18> units{
        "mm", "N", "MPa", "N mm",   "mJ",   "deg",      "",    "",      "HRC",
        "C",  "h", "g",   "kg mm2", "N/mm", "N mm/rad", "m/s", "deg/s", "mm/N"};
    return units.at(static_cast<std::size_t>(quantity));
}

std::string with_unit(double value, Quantity quantity) {
    // With a point, whatever the locale.
    std::array<char, 32> digits{};
    const auto end =
        std::to_chars(digits.begin(), digits.end(), value, std::chars_format::general, 7);
    std::string text(digits.begin(), end.ptr);
    const std::string_view unit = unit_of(quantity);
    return unit.empty() ? text : text.append(" ").append(unit);
}

}  // namespace backspring

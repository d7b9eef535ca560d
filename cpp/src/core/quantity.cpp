#include "backspring/core/quantity.hpp"

#include <array>
#include <cstdio>

namespace backspring {

std::string_view unit_of(Quantity quantity) {
    constexpr std::array<std::string_view, 18> units{
        "mm", "N", "MPa", "N mm",   "mJ",   "deg",      "",    "",      "HRC",
        "C",  "h", "g",   "kg mm2", "N/mm", "N mm/rad", "m/s", "deg/s", "mm/N"};
    return units.at(static_cast<std::size_t>(quantity));
}

std::string with_unit(double value, Quantity quantity) {
    char digits[32];
    std::snprintf(digits, sizeof digits, "%.7g", value);
    const std::string_view unit = unit_of(quantity);
    return unit.empty() ? digits : std::string(digits).append(" ").append(unit);
}

}  // namespace backspring

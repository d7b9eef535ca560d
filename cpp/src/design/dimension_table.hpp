#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "backspring/design/design.hpp"

namespace backspring {

/// How a number of a design is found and changed.
struct DimensionEntry {
    std::string_view key;
    std::string_view unit;
    bool (*has)(const Design& design);
    std::optional<double> (*get)(const Design& design);
    void (*set)(Design& design, double value);
};

/// All of them, in the order in which they are set: what others build on comes first.
[[nodiscard]] std::span<const DimensionEntry> dimension_table();

/// The entry with a key; none when there is no such key.
[[nodiscard]] const DimensionEntry* find_dimension(std::string_view key);

}  // namespace backspring

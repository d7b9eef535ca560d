#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "backspring/design/design.hpp"

namespace backspring {

/// One number in which designs can differ.
struct Dimension {
    std::string key;   ///< its key in a design file, as "fit.preload"
    std::string unit;  ///< "mm", "MPa", or nothing for a ratio
};

/// Every number in which designs can differ, in the order in which they are set.
///
/// Besides keys of a design file: "spring.thickness" makes one thickness of a whole profile,
/// "spring.thickness_scale" and "spring.thickness_offset" keep its shape. "spring.yield" takes its
/// band along in proportion, "spring.rear_pin" the rear pin's hole.
[[nodiscard]] std::vector<Dimension> dimensions();

/// Whether a design has such a number to change: a half-stop face, a kick, a pin hole.
///
/// @throws InvalidInput  no dimension has this key
[[nodiscard]] bool has_dimension(const Design& design, std::string_view key);

/// The number as it is; nothing where there is none, or several that differ.
///
/// @throws InvalidInput  no dimension has this key
[[nodiscard]] std::optional<double> dimension_value(const Design& design, std::string_view key);

/// A copy of a design with one number changed.
///
/// @param value  [mm], [MPa] or a ratio, as the dimension has it; the design's rules judge it later
/// @throws InvalidInput  no dimension has this key, or the design has no such number
[[nodiscard]] Design with_dimension(const Design& design, std::string_view key, double value);

}  // namespace backspring

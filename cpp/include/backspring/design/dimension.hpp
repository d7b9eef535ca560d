#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "backspring/design/field.hpp"

namespace backspring {

/// A number in which the designs of a study can differ, of whichever blade.
struct Dimension {
    const Field* field = nullptr;  ///< its row, always there
    std::size_t blade = 0;         ///< whose it is, as placed in the list

    /// As the row says, of that blade; blades on one pin have their pivots moved together.
    void set(Design& design, double value) const;

    /// The number as it is; nothing where there is none, or several that differ.
    [[nodiscard]] std::optional<double> value(const Design& design) const;

    /// All numbers that a design has for it, none where it has none.
    [[nodiscard]] std::vector<double> numbers(const Design& design) const;
};

/// The number by its key: "tang.closed" of the own blade, "blades.pen.tang.closed" of another.
///
/// @returns  nothing where no dimension has this key, or the design no such blade
[[nodiscard]] std::optional<Dimension> find_dimension(const Design& design, std::string_view key);

/// Its key in a design.
[[nodiscard]] std::string key_of(const Dimension& dimension, const Design& design);

/// The key under which its number is kept: one where several keys state the same, as preload and
/// the rear pin's offset do.
[[nodiscard]] std::string number_key(const Dimension& dimension, const Design& design);

/// What is told of a key whose number an earlier one states already: "is given twice".
[[nodiscard]] std::string given_again(std::string_view key, std::string_view earlier);

/// All numbers in which designs made from this one can differ: its own, then the other blades'.
[[nodiscard]] std::vector<Dimension> dimensions_of(const Design& design);

/// The place of the blade that a key names as "blades.pen."; 0 for one that names none.
///
/// @param key  loses that beginning
/// @returns    nothing where the design has no such blade
[[nodiscard]] std::optional<std::size_t> take_blade(const Design& design, std::string_view& key);

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
/// @param value  in the core's unit of its quantity; the design's rules judge it later
/// @throws InvalidInput  no dimension has this key, or the design has no such number
[[nodiscard]] Design with_dimension(const Design& design, std::string_view key, double value);

}  // namespace backspring

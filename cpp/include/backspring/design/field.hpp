#pragma once

#include <limits>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "backspring/core/quantity.hpp"
#include "backspring/design/design.hpp"

namespace backspring {

/// How the value of a key is written.
enum class Form {
    number,            ///< one number
    one_or_two,        ///< one number for two places, or one for each
    pair,              ///< two numbers
    readings,          ///< one number, or several readings of it
    profile,           ///< one number, or rows of station and number
    points,            ///< rows of two lengths: a drawn line
    outline,           ///< rows of two lengths, or of two and a bulge: a closed outline
    choice,            ///< one of some words
    choice_or_number,  ///< one of some words, or a number
    flag,              ///< true or false; in a design 1 or 0
    text,              ///< a name
};

/// All that is known of one key of the design file; every rule, text and change reads it here.
///
/// A row with neither `set` nor `set_numbers` is not a number of the core's design: whoever reads
/// files makes something else of it, as a hardness becomes a strength.
struct Field {
    std::string key;                       ///< as "spring.width"
    Form form = Form::number;              ///< how it is written
    Quantity quantity = Quantity::length;  ///< what its numbers measure
    double least = 0.0;                    ///< least number that makes sense, itself allowed
    double greatest = 0.0;                 ///< greatest number that makes sense, itself allowed
    std::vector<std::string> choices{};    ///< the words, for a choice
    bool required = false;                 ///< its table cannot do without it
    bool dimension = false;                ///< whether designs of a study may differ in it
    bool in_file = true;                   ///< whether a file may hold it
    bool derived = false;                  ///< another way to state a number that has its own key
    bool of_blade = false;                 ///< whether every blade has it
    std::string left_out{};                ///< what holds where it is not given
    std::string meaning{};                 ///< what it is, from where to where it is measured
    std::string example{};                 ///< a value as a file holds it
    /// The number in a design; nothing where it has none, or several that differ.
    std::optional<double> (*get)(const Design& design) = nullptr;
    /// Makes it the number of a design that has one, at every place that the key names.
    void (*set)(Design& design, double value) = nullptr;
    /// All numbers of a key that can hold several; nothing for others.
    std::vector<double> (*numbers)(const Design& design) = nullptr;
    /// Sets them as a file holds them: two, or station and number in turn.
    void (*set_numbers)(Design& design, std::span<const double> values) = nullptr;
};

/// Every key, in the order of the file, which is the order in which numbers are set.
[[nodiscard]] const std::vector<Field>& fields();

/// The keys in which the designs of a study can differ, in the same order.
///
/// Besides keys of a design file: "spring.thickness_scale" and "spring.thickness_offset", under
/// which a profile keeps its shape.
[[nodiscard]] const std::vector<Field>& dimensions();

/// The row of a key; none when there is no such key.
[[nodiscard]] const Field* find_field(std::string_view key);

/// The row of a dimension; none when there is no such dimension.
[[nodiscard]] const Field* find_dimension(std::string_view key);

/// All numbers that a design has for a key, none where it has none.
[[nodiscard]] std::vector<double> numbers(const Field& field, const Design& design);

/// What of a key's range a number breaks: not finite, too small or too large.
///
/// @note a number not above 0 is told so, where none such makes sense
[[nodiscard]] std::optional<Fault> range_fault(const Field& field, double value);

/// Numbers of a design file by key, in the core's units.
using GivenNumbers = std::map<std::string, std::vector<double>, std::less<>>;

/// A copy of a design with numbers as a file holds them; what the file must hold and does not is
/// no number, so that rules can still judge the rest.
///
/// @param given  one number, two, or rows in turn, by key
/// @throws InvalidInput  a key that cannot hold as many numbers
[[nodiscard]] Design with_numbers(const Design& design, const GivenNumbers& given);

}  // namespace backspring

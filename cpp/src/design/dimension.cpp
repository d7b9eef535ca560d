#include "backspring/design/dimension.hpp"

#include <algorithm>
#include <utility>

namespace backspring {
namespace {

constexpr std::string_view kBlades = "blades.";

bool is_of_blade(std::string_view key) {
    return key.starts_with("tang.") || key.starts_with("fit.") || key.starts_with("blade.");
}

InvalidInput refusal(std::string_view key, const char* text) {
    return InvalidInput({{.key = std::string(key), .text = text}});
}

Dimension dimension(const Design& design, std::string_view key) {
    const std::optional<Dimension> found = find_dimension(design, key);
    if (!found) throw refusal(key, "is no dimension of a design");
    return *found;
}

/// The blade first in the list for a while; the spring stays as it lies.
Design with_first(const Design& design, std::size_t blade) {
    Design seen = design;
    std::swap(seen.own(), seen.blades[blade]);
    return seen;
}

/// Blades that stood on one pin still do.
void keep_on_pin(Design& design, const Blade& moved, double from_mm) {
    for (Blade& other : design.blades) {
        if (other.end == moved.end && other.tang.pivot_mm == from_mm) {
            other.tang.pivot_mm = moved.tang.pivot_mm;
        }
    }
}

}  // namespace

void Dimension::set(Design& design, double value) const {
    if (design.blades.size() == 1) return field->set(design, value);
    const double pivot = design.blades[blade].tang.pivot_mm;
    std::swap(design.own(), design.blades[blade]);
    field->set(design, value);
    std::swap(design.own(), design.blades[blade]);
    keep_on_pin(design, design.blades[blade], pivot);
}

std::optional<double> Dimension::value(const Design& design) const {
    return blade == 0 ? field->get(design) : field->get(with_first(design, blade));
}

std::vector<double> Dimension::numbers(const Design& design) const {
    return backspring::numbers(*field, blade == 0 ? design : with_first(design, blade));
}

std::optional<std::size_t> take_blade(const Design& design, std::string_view& key) {
    if (!key.starts_with(kBlades)) return 0;
    const std::string_view rest = key.substr(kBlades.size());
    const std::size_t dot = std::min(rest.find('.'), rest.size());
    const auto named = std::ranges::find(design.blades, rest.substr(0, dot), &Blade::name);
    if (named == design.blades.end()) return std::nullopt;
    key = rest.substr(std::min(dot + 1, rest.size()));
    return static_cast<std::size_t>(named - design.blades.begin());
}

std::optional<Dimension> find_dimension(const Design& design, std::string_view key) {
    const bool names_blade = key.starts_with(kBlades);
    const auto blade = take_blade(design, key);
    if (!blade || (names_blade && !is_of_blade(key))) return std::nullopt;
    const Field* found = find_dimension(key);
    return found ? std::optional(Dimension{found, *blade}) : std::nullopt;
}

std::string key_of(const Dimension& dimension, const Design& design) {
    if (dimension.blade == 0) return dimension.field->key;
    return std::string(kBlades) + design.blades[dimension.blade].name + "." + dimension.field->key;
}

std::string number_key(const Dimension& dimension, const Design& design) {
    const bool offset = dimension.field->key == "fit.rear_pin_offset";
    return key_of(offset ? Dimension{find_dimension("fit.preload"), dimension.blade} : dimension,
                  design);
}

std::string given_again(std::string_view key, std::string_view earlier) {
    if (key == earlier) return "is given twice";
    return "states the same number as " + std::string(earlier) + ", which is given too";
}

std::vector<Dimension> dimensions_of(const Design& design) {
    std::vector<Dimension> all;
    for (std::size_t blade = 0; blade < design.blades.size(); ++blade) {
        for (const Field& field : dimensions()) {
            if (blade == 0 || is_of_blade(field.key)) all.push_back({&field, blade});
        }
    }
    return all;
}

bool has_dimension(const Design& design, std::string_view key) {
    return !dimension(design, key).numbers(design).empty();
}

std::optional<double> dimension_value(const Design& design, std::string_view key) {
    return dimension(design, key).value(design);
}

Design with_dimension(const Design& design, std::string_view key, double value) {
    const Dimension found = dimension(design, key);
    if (found.numbers(design).empty()) throw refusal(key, "the design has none to change");
    Design changed = design;
    found.set(changed, value);
    return changed;
}

}  // namespace backspring

#include "backspring/design/dimension.hpp"

#include "dimension_table.hpp"

namespace backspring {
namespace {

InvalidInput refusal(std::string_view key, const char* message) {
    return InvalidInput({{std::string(key), message}});
}

const DimensionEntry& entry(std::string_view key) {
    const DimensionEntry* found = find_dimension(key);
    if (!found) throw refusal(key, "is no dimension of a design");
    return *found;
}

}  // namespace

std::vector<Dimension> dimensions() {
    std::vector<Dimension> all;
    for (const DimensionEntry& e : dimension_table()) {
        all.push_back({.key = std::string(e.key), .unit = std::string(e.unit)});
    }
    return all;
}

bool has_dimension(const Design& design, std::string_view key) { return entry(key).has(design); }

std::optional<double> dimension_value(const Design& design, std::string_view key) {
    const DimensionEntry& found = entry(key);
    return found.has(design) ? found.get(design) : std::nullopt;
}

Design with_dimension(const Design& design, std::string_view key, double value) {
    const DimensionEntry& found = entry(key);
    if (!found.has(design)) throw refusal(key, "the design has none to change");
    Design changed = design;
    found.set(changed, value);
    return changed;
}

}  // namespace backspring

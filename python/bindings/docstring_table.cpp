#include "docstring_table.hpp"

#include <stdexcept>
#include <string>

namespace backspring::python {

const char* docstring(std::string_view name) {
    const auto entry = docstring_table().find(name);
    if (entry == docstring_table().end()) {
        throw std::logic_error("no comment in the headers for " + std::string(name));
    }
    return entry->second;
}

}  // namespace backspring::python

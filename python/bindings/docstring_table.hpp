#pragma once

#include <map>
#include <string_view>

namespace backspring::python {

/// Texts by name, read from the comments of the core's headers when the module is built.
using DocstringTable = std::map<std::string_view, const char*>;
const DocstringTable& docstring_table();

/// The text of a name. A lookup and not a generated header: a changed comment then rebuilds one
/// file and not every binding; a name without a text stops the import.
const char* docstring(std::string_view name);

}  // namespace backspring::python

#define DOC(name) ::backspring::python::docstring(#name)

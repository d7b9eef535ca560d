#pragma once

#include <pybind11/native_enum.h>
#include <pybind11/pybind11.h>
#include <pybind11/stl.h>
#include <pybind11/typing.h>

#include <string>
#include <tuple>
#include <type_traits>
#include <utility>

#include "docstring_table.hpp"

namespace backspring::python {

namespace py = pybind11;

/// One field of a plain struct: its name, place and text.
template <class Struct, class Value>
struct Field {
    const char* name;
    Value Struct::*member;
    const char* doc;
};

/// An argument with its default; one that Python could not write is shown as "...".
template <class Value>
py::arg_v argument(const char* name, const Value& value) {
    constexpr bool plain = std::is_arithmetic_v<Value> || std::is_same_v<Value, std::string>;
    const bool none = py::cast(value).is_none();
    return py::arg_v(name, value, plain || none ? nullptr : "...");
}

/// Read-only fields and pickling.
template <class Struct, class... Values>
void define_fields(py::class_<Struct>& type, Field<Struct, Values>... fields) {
    (type.def_readonly(fields.name, fields.member, fields.doc), ...);
    const auto save = [fields...](const Struct& self) -> py::typing::Tuple<Values...> {
        return py::make_tuple(self.*(fields.member)...);
    };
    const auto restore = [fields...](const py::typing::Tuple<Values...>& saved) {
        if (saved.size() != sizeof...(fields)) throw py::value_error("not a state of this type");
        Struct result{};
        std::size_t i = 0;
        ((result.*(fields.member) = saved[i++].template cast<Values>()), ...);
        return result;
    };
    type.def(py::pickle(save, restore));
}

/// Binds a plain struct as an immutable value: keyword constructor with the struct's own defaults,
/// read-only fields, ==, repr and pickling, all from one list of fields.
template <class Struct, class... Values>
void define_record(py::class_<Struct>& type, Field<Struct, Values>... fields) {
    const Struct defaults{};
    type.def(py::init([fields...](Values... values) {
                 Struct result{};
                 ((result.*(fields.member) = std::move(values)), ...);
                 return result;
             }),
             py::kw_only(), argument(fields.name, defaults.*(fields.member))...);
    define_fields(type, fields...);

    const auto state = [fields...](const Struct& self) {
        return py::make_tuple(self.*(fields.member)...);
    };
    type.def("__eq__", [state](const Struct& self, const py::object& other) -> py::object {
        if (!py::isinstance<Struct>(other)) {
            return py::reinterpret_borrow<py::object>(Py_NotImplemented);
        }
        return py::bool_(state(self).equal(state(other.cast<const Struct&>())));
    });
    type.attr("__hash__") = py::none();
    const std::string name = py::str(type.attr("__name__"));
    type.def("__repr__", [name, fields...](const Struct& self) {
        std::string text = name + "(";
        const char* separator = "";
        ((text += std::string(separator) + fields.name + "=" +
                  std::string(py::repr(py::cast(self.*(fields.member)))),
          separator = ", "),
         ...);
        return text + ")";
    });
}

}  // namespace backspring::python

/// A field by its own name, with the text of its header.
#define BACKSPRING_FIELD(Struct, name) \
    ::backspring::python::Field { #name, &Struct::name, DOC(Struct##_##name) }

#pragma once

#include <pybind11/native_enum.h>
#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include <string>
#include <vector>

#include "docstring_table.hpp"

// A plain struct becomes an immutable Python value from one list of its fields. What differs from
// type to type is a handful of function pointers; everything else is compiled once, in record.cpp.

namespace backspring::python {

namespace py = pybind11;

/// What bindings do with values of one C++ type.
struct ValueType {
    py::object (*get)(const void* place, py::handle owner);
    void (*set)(void* place, py::handle value);
    py::object (*echo)();  ///< a function from such a value to itself: its signature names the type
};

/// One field of a plain struct: its name, text, type and place.
struct Field {
    const char* name;
    const char* doc;
    const ValueType* type;
    void* (*place)(void* record);
};

/// How a record of one C++ type is made and thrown away.
struct RecordType {
    void* (*make)();
    void (*drop)(void* record);
    void* (*open)(py::handle self);  ///< the C++ value; throws for another type
    bool (*same_type)(py::handle other);
};

/// Read-only fields and pickling.
void define_fields(const py::object& type, const RecordType& record, std::vector<Field> fields);

/// Keyword constructor with the struct's own defaults, read-only fields, ==, repr and pickling.
void define_record(const py::object& type, const RecordType& record, std::vector<Field> fields);

template <class Value>
const ValueType* value_type() {
    static constexpr ValueType kType{
        [](const void* place, py::handle owner) {
            return py::cast(*static_cast<const Value*>(place),
                            py::return_value_policy::reference_internal, owner);
        },
        [](void* place, py::handle value) { *static_cast<Value*>(place) = value.cast<Value>(); },
        []() -> py::object { return py::cpp_function([](const Value& v) -> Value { return v; }); }};
    return &kType;
}

template <class Struct>
const RecordType& record_type() {
    static constexpr RecordType kType{
        []() -> void* { return new Struct{}; },
        [](void* record) { delete static_cast<Struct*>(record); },
        [](py::handle self) -> void* { return self.cast<Struct*>(); },
        [](py::handle other) { return py::isinstance<Struct>(other); }};
    return kType;
}

template <auto member>
struct PlaceOf;

template <class Struct, class Value, Value Struct::*member>
struct PlaceOf<member> {
    using Type = Value;
    static void* place(void* record) { return &(static_cast<Struct*>(record)->*member); }
};

template <auto member>
Field field(const char* name, const char* doc) {
    return {name, doc, value_type<typename PlaceOf<member>::Type>(), &PlaceOf<member>::place};
}

template <class Struct, class... Fields>
void define_fields(py::class_<Struct>& type, const Fields&... fields) {
    define_fields(type, record_type<Struct>(), {fields...});
}

template <class Struct, class... Fields>
void define_record(py::class_<Struct>& type, const Fields&... fields) {
    define_record(type, record_type<Struct>(), {fields...});
}

/// An argument whose default Python could not write; it is shown as "...".
template <class Value>
py::arg_v argument(const char* name, const Value& value) {
    return py::arg_v(name, value, "...");
}

}  // namespace backspring::python

/// A field by its own name, with the text of its header.
#define BACKSPRING_FIELD(Struct, name) \
    ::backspring::python::field<&Struct::name>(#name, DOC(Struct##_##name))

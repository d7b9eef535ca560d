#include "record.hpp"

#include <algorithm>
#include <memory>
#include <utility>

namespace backspring::python {
namespace {

struct Record {
    std::string name;
    RecordType type;
    std::vector<Field> fields;

    [[nodiscard]] py::object value(const Field& field, py::handle self) const {
        return field.type->get(field.place(type.open(self)), self);
    }
};
using Shared = std::shared_ptr<const Record>;
using Owner = std::unique_ptr<void, void (*)(void*)>;

/// How pybind11 writes a field's type, as an argument and as a result.
std::pair<std::string, std::string> written_types(const Field& field) {
    const std::string text = py::str(field.type->echo().attr("__doc__"));
    const auto arrow = text.rfind(") -> "), colon = text.find(": ");
    const auto end = text.find_last_not_of('\n');
    return {text.substr(colon + 2, arrow - colon - 2), text.substr(arrow + 5, end - arrow - 4)};
}

/// A method whose docstring, signature and all, is given.
template <class Function, class... Extra>
py::cpp_function documented(Function function, const std::string& doc, const Extra&... extra) {
    py::options options;
    options.disable_function_signatures();
    return {std::move(function), py::doc(doc.c_str()), extra...};
}

void set(const Record& record, void* self, const Field& field, py::handle value) {
    try {
        field.type->set(field.place(self), value);
    } catch (const py::cast_error&) {
        throw py::type_error(record.name + ": " + field.name + " must be " +
                             written_types(field).first + ", got " + std::string(py::repr(value)));
    }
}

Owner made_from(const Record& record, const py::kwargs& given) {
    Owner self(record.type.make(), record.type.drop);
    std::size_t used = 0;
    for (const Field& field : record.fields) {
        if (!given.contains(field.name)) continue;
        set(record, self.get(), field, given[field.name]);
        ++used;
    }
    if (used == given.size()) return self;
    for (const auto& [key, value] : given) {
        const std::string name = py::str(key);
        const auto is_named = [&](const Field& field) { return name == field.name; };
        if (std::none_of(record.fields.begin(), record.fields.end(), is_named)) {
            throw py::type_error(record.name + " has no field " + name);
        }
    }
    return self;
}

Owner made_from(const Record& record, const py::tuple& state) {
    if (state.size() != record.fields.size()) throw py::value_error("not a state of this type");
    Owner self(record.type.make(), record.type.drop);
    for (std::size_t i = 0; i < state.size(); ++i) {
        set(record, self.get(), record.fields[i], state[i]);
    }
    return self;
}

py::tuple state_of(const Record& record, py::handle self) {
    py::tuple state(record.fields.size());
    for (std::size_t i = 0; i < record.fields.size(); ++i) {
        state[i] = record.value(record.fields[i], self);
    }
    return state;
}

template <class Given>
void define_constructor(const py::object& type,
                        const Shared& record,
                        const char* name,
                        const std::string& doc) {
    const auto construct = [record](py::detail::value_and_holder& self, const Given& given) {
        self.value_ptr() = made_from(*record, given).release();
    };
    type.attr(name) = documented(construct, doc, py::name(name), py::is_method(type),
                                 py::detail::is_new_style_constructor());
}

/// A default as Python writes it, where it can.
std::string written(const py::object& value) {
    const bool plain = value.is_none() || py::isinstance<py::float_>(value) ||
                       py::isinstance<py::int_>(value) || py::isinstance<py::str>(value);
    return plain ? std::string(py::repr(value)) : "...";
}

std::string constructor_doc(const Record& record) {
    std::string text = "__init__(self, *";
    const Owner defaults(record.type.make(), record.type.drop);
    for (const Field& field : record.fields) {
        const py::object value = field.type->get(field.place(defaults.get()), py::none());
        text += std::string(", ") + field.name + ": " + written_types(field).first + " = " +
                written(value);
    }
    return text + ") -> None\n";
}

void define_repr(const py::object& type, const Shared& record) {
    type.attr("__repr__") = py::cpp_function(
        [record](const py::object& self) {
            std::string text = record->name + "(";
            const char* separator = "";
            for (const Field& field : record->fields) {
                text += std::string(separator) + field.name + "=" +
                        std::string(py::repr(record->value(field, self)));
                separator = ", ";
            }
            return text + ")";
        },
        py::name("__repr__"), py::is_method(type));
}

/// A table of names and values, for notebooks.
void define_html(const py::object& type, const Shared& record) {
    type.attr("_repr_html_") = py::cpp_function(
        [record](const py::object& self) {
            const py::object escape = py::module_::import("html").attr("escape");
            std::string text = "<table><caption>" + record->name + "</caption>";
            for (const Field& field : record->fields) {
                const std::string value = py::str(escape(py::repr(record->value(field, self))));
                text += std::string("<tr><td>") + field.name + "</td><td>" + value + "</td></tr>";
            }
            return text + "</table>";
        },
        py::name("_repr_html_"), py::is_method(type));
}

void define_equality(const py::object& type, const Shared& record) {
    type.attr("__eq__") = py::cpp_function(
        [record](const py::object& self, const py::object& other) -> py::object {
            if (!record->type.same_type(other)) {
                return py::reinterpret_borrow<py::object>(Py_NotImplemented);
            }
            return py::bool_(state_of(*record, self).equal(state_of(*record, other)));
        },
        py::name("__eq__"), py::is_method(type));
    type.attr("__hash__") = py::none();
}

/// What the constructor takes; a type may show more than that.
void define_names(const py::object& type, const Record& record) {
    py::list names;
    for (const Field& field : record.fields) names.append(field.name);
    type.attr("_fields") = py::tuple(names);
}

Shared define(const py::object& type, const RecordType& of, std::vector<Field> fields) {
    const auto record = std::make_shared<const Record>(
        Record{py::str(type.attr("__name__")), of, std::move(fields)});
    const py::object property = py::module_::import("builtins").attr("property");
    for (const Field& field : record->fields) {
        const auto get = [record, &field](const py::object& self) {
            return record->value(field, self);
        };
        const std::string doc = "(self) -> " + written_types(field).second + "\n";
        type.attr(field.name) =
            property(documented(get, doc), py::none(), py::none(), py::str(field.doc));
    }
    type.attr("__getstate__") =
        py::cpp_function([record](const py::object& self) { return state_of(*record, self); },
                         py::name("__getstate__"), py::is_method(type));
    define_constructor<py::tuple>(type, record, "__setstate__",
                                  "__setstate__(self, state: tuple) -> None\n");
    return record;
}

}  // namespace

void define_fields(const py::object& type, const RecordType& of, std::vector<Field> fields) {
    define(type, of, std::move(fields));
}

void define_record(const py::object& type, const RecordType& of, std::vector<Field> fields) {
    const Shared record = define(type, of, std::move(fields));
    define_constructor<py::kwargs>(type, record, "__init__", constructor_doc(*record));
    define_names(type, *record);
    define_equality(type, record);
    define_repr(type, record);
    define_html(type, record);
}

}  // namespace backspring::python

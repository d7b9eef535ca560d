#include "backspring/design/field.hpp"

#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_field(py::module_& m) {
    py::native_enum<Form>(m, "Form", "enum.Enum", DOC(Form))
        .value("number", Form::number, DOC(Form_number))
        .value("one_or_two", Form::one_or_two, DOC(Form_one_or_two))
        .value("pair", Form::pair, DOC(Form_pair))
        .value("profile", Form::profile, DOC(Form_profile))
        .value("choice", Form::choice, DOC(Form_choice))
        .value("choice_or_number", Form::choice_or_number, DOC(Form_choice_or_number))
        .value("text", Form::text, DOC(Form_text))
        .finalize();
    py::class_<Field>(m, "Field", DOC(Field));
}

void define_field(py::module_& m) {
    auto type = declared<Field>();
    define_record(type, BACKSPRING_FIELD(Field, key), BACKSPRING_FIELD(Field, form),
                  BACKSPRING_FIELD(Field, quantity), BACKSPRING_FIELD(Field, least),
                  BACKSPRING_FIELD(Field, greatest), BACKSPRING_FIELD(Field, choices),
                  BACKSPRING_FIELD(Field, required), BACKSPRING_FIELD(Field, dimension),
                  BACKSPRING_FIELD(Field, in_file), BACKSPRING_FIELD(Field, derived),
                  BACKSPRING_FIELD(Field, second), BACKSPRING_FIELD(Field, left_out),
                  BACKSPRING_FIELD(Field, meaning), BACKSPRING_FIELD(Field, example));
    m.def("fields", &fields, DOC(fields));
    m.def("dimensions", &dimensions, DOC(dimensions));
    m.def("range_fault", &range_fault, py::arg("field"), py::arg("value"), DOC(range_fault));
    m.def("with_numbers", &with_numbers, py::arg("design"), py::arg("given"), DOC(with_numbers));
    m.def("has_dimension", &has_dimension, py::arg("design"), py::arg("key"), DOC(has_dimension));
    m.def("dimension_value", &dimension_value, py::arg("design"), py::arg("key"),
          DOC(dimension_value));
    m.def("with_dimension", &with_dimension, py::arg("design"), py::arg("key"), py::arg("value"),
          DOC(with_dimension));
}

}  // namespace backspring::python

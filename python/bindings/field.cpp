#include "backspring/design/dimension.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {
namespace {

using Row = ::backspring::Field;

}  // namespace

#define BACKSPRING_ROW(name) field<&Row::name>(#name, DOC(Field_##name))

void declare_field(py::module_& m) {
    py::native_enum<Form>(m, "Form", "enum.Enum", DOC(Form))
        .value("number", Form::number, DOC(Form_number))
        .value("one_or_two", Form::one_or_two, DOC(Form_one_or_two))
        .value("pair", Form::pair, DOC(Form_pair))
        .value("readings", Form::readings, DOC(Form_readings))
        .value("profile", Form::profile, DOC(Form_profile))
        .value("points", Form::points, DOC(Form_points))
        .value("outline", Form::outline, DOC(Form_outline))
        .value("choice", Form::choice, DOC(Form_choice))
        .value("choice_or_number", Form::choice_or_number, DOC(Form_choice_or_number))
        .value("flag", Form::flag, DOC(Form_flag))
        .value("text", Form::text, DOC(Form_text))
        .finalize();
    py::class_<Row>(m, "Field", DOC(Field));
}

void define_field(py::module_& m) {
    auto type = declared<Row>();
    define_record(type, BACKSPRING_ROW(key), BACKSPRING_ROW(form), BACKSPRING_ROW(quantity),
                  BACKSPRING_ROW(least), BACKSPRING_ROW(greatest), BACKSPRING_ROW(choices),
                  BACKSPRING_ROW(required), BACKSPRING_ROW(dimension), BACKSPRING_ROW(in_file),
                  BACKSPRING_ROW(derived), BACKSPRING_ROW(of_blade), BACKSPRING_ROW(left_out),
                  BACKSPRING_ROW(meaning), BACKSPRING_ROW(example));
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

#undef BACKSPRING_ROW

}  // namespace backspring::python

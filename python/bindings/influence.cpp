#include "backspring/sensitivity/influence.hpp"

#include <pybind11/eigen.h>

#include "backspring/sensitivity/gradient.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_influence(py::module_& m) {
    py::class_<SidedRates>(m, "SidedRates", DOC(SidedRates));
    py::class_<Gradient>(m, "Gradient", DOC(Gradient));
    py::class_<Influence>(m, "Influence", DOC(Influence));
}

void define_influence(py::module_& m) {
    using NoGil = py::call_guard<py::gil_scoped_release>;
    auto sided = declared<SidedRates>();
    define_fields(sided, BACKSPRING_FIELD(SidedRates, below), BACKSPRING_FIELD(SidedRates, above));
    auto gradients = declared<Gradient>();
    define_fields(gradients, BACKSPRING_FIELD(Gradient, figures),
                  BACKSPRING_FIELD(Gradient, dimensions), BACKSPRING_FIELD(Gradient, value),
                  BACKSPRING_FIELD(Gradient, derivative), BACKSPRING_FIELD(Gradient, below),
                  BACKSPRING_FIELD(Gradient, above));
    gradients.def("find", &Gradient::find, py::arg("figure"), py::arg("dimension"),
                  DOC(Gradient_find));
    gradients.def("sides", &Gradient::sides, py::arg("figure"), py::arg("dimension"),
                  DOC(Gradient_sides));
    gradients.def("of", &Gradient::of, py::arg("figure"), py::arg("dimension"), DOC(Gradient_of));
    auto influences = declared<Influence>();
    define_fields(influences, BACKSPRING_FIELD(Influence, station_mm),
                  BACKSPRING_FIELD(Influence, figures), BACKSPRING_FIELD(Influence, value),
                  BACKSPRING_FIELD(Influence, change_per_pass));
    influences.def("of", &Influence::of, py::arg("figure"), DOC(Influence_of));
    m.def("gradient", &gradient, py::arg("design"), NoGil(), DOC(gradient));
    m.def("influence", &influence, py::arg("design"),
          py::arg_v("face", GrindFace::back, "GrindFace.back"), py::arg("spacing_mm") = 0.5,
          NoGil(), DOC(influence));
}

}  // namespace backspring::python

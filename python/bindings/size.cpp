#include "backspring/size/size.hpp"

#include <pybind11/eigen.h>

#include "backspring/size/design_map.hpp"
#include "backspring/size/taper.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_size(py::module_& m) {
    py::class_<SizeDimension>(m, "SizeDimension", DOC(SizeDimension));
    py::class_<SizeBounds>(m, "SizeBounds", DOC(SizeBounds));
    py::class_<SizeTarget>(m, "SizeTarget", DOC(SizeTarget));
    py::class_<SizeAnswer>(m, "SizeAnswer", DOC(SizeAnswer));
    py::class_<SizeResult>(m, "SizeResult", DOC(SizeResult));
    py::class_<DesignMap>(m, "DesignMap", DOC(DesignMap));
    py::class_<Taper>(m, "Taper", DOC(Taper));
}

void define_size(py::module_& m) {
    using NoGil = py::call_guard<py::gil_scoped_release>;
    auto dimension = declared<SizeDimension>();
    define_record(dimension, BACKSPRING_FIELD(SizeDimension, key),
                  BACKSPRING_FIELD(SizeDimension, station_mm),
                  BACKSPRING_FIELD(SizeDimension, low_mm), BACKSPRING_FIELD(SizeDimension, high_mm),
                  BACKSPRING_FIELD(SizeDimension, stock_mm));
    auto bounds = declared<SizeBounds>();
    define_record(bounds, BACKSPRING_FIELD(SizeBounds, low_mm),
                  BACKSPRING_FIELD(SizeBounds, high_mm));
    auto target = declared<SizeTarget>();
    define_record(target, BACKSPRING_FIELD(SizeTarget, pull_n),
                  BACKSPRING_FIELD(SizeTarget, yield_margin));
    auto answer = declared<SizeAnswer>();
    define_record(answer, BACKSPRING_FIELD(SizeAnswer, design),
                  BACKSPRING_FIELD(SizeAnswer, sizes_mm), BACKSPRING_FIELD(SizeAnswer, pull_n),
                  BACKSPRING_FIELD(SizeAnswer, yield_margin));
    auto result = declared<SizeResult>();
    define_record(result, BACKSPRING_FIELD(SizeResult, answers),
                  BACKSPRING_FIELD(SizeResult, nearest), BACKSPRING_FIELD(SizeResult, limits));
    auto map = declared<DesignMap>();
    define_fields(map, BACKSPRING_FIELD(DesignMap, x_mm), BACKSPRING_FIELD(DesignMap, y_mm),
                  BACKSPRING_FIELD(DesignMap, pull_n), BACKSPRING_FIELD(DesignMap, yield_margin));
    auto taper = declared<Taper>();
    define_record(taper, BACKSPRING_FIELD(Taper, design), BACKSPRING_FIELD(Taper, pull_n),
                  BACKSPRING_FIELD(Taper, peak_stress_mpa), BACKSPRING_FIELD(Taper, yield_margin),
                  BACKSPRING_FIELD(Taper, even_stress_mpa));
    m.def("size", &size, py::arg("design"), py::arg("target"), py::arg("dimensions"), NoGil(),
          DOC(size));
    m.def("size_of", &size_of, py::arg("design"), py::arg("dimension"), DOC(size_of));
    m.def("size_bounds", &size_bounds, py::arg("design"), py::arg("dimension"), DOC(size_bounds));
    m.def("design_map", &design_map, py::arg("design"), py::arg("x"), py::arg("x_mm"), py::arg("y"),
          py::arg("y_mm"), NoGil(), DOC(design_map));
    m.def("propose_taper", &propose_taper, py::arg("design"), py::arg("pull_n"),
          py::arg("least_thickness_mm"), py::arg("stations") = 12, NoGil(), DOC(propose_taper));
}

}  // namespace backspring::python

#include "backspring/check/whole_back.hpp"

#include "backspring/fit/flush_targets.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_whole_back(py::module_& m) {
    py::class_<BackAlong>(m, "BackAlong", DOC(BackAlong));
    py::class_<WholeBack>(m, "WholeBack", DOC(WholeBack));
    py::class_<FlushTargets>(m, "FlushTargets", DOC(FlushTargets));
}

void define_whole_back(py::module_& m) {
    using NoGil = py::call_guard<py::gil_scoped_release>;
    auto along = declared<BackAlong>();
    define_record(
        along, BACKSPRING_FIELD(BackAlong, least_mm), BACKSPRING_FIELD(BackAlong, least_at_mm),
        BACKSPRING_FIELD(BackAlong, greatest_mm), BACKSPRING_FIELD(BackAlong, greatest_at_mm),
        BACKSPRING_FIELD(BackAlong, per_dial_mm));
    auto back = declared<WholeBack>();
    define_record(back, BACKSPRING_FIELD(WholeBack, half_stop),
                  BACKSPRING_FIELD(WholeBack, closed));
    auto targets = declared<FlushTargets>();
    define_record(targets, BACKSPRING_FIELD(FlushTargets, nowhere_low_mm),
                  BACKSPRING_FIELD(FlushTargets, flattest_mm),
                  BACKSPRING_FIELD(FlushTargets, flattest_off_mm),
                  BACKSPRING_FIELD(FlushTargets, flattest_dial_mm));
    m.def("whole_back", py::overload_cast<const Design&>(&whole_back), py::arg("design"), NoGil(),
          DOC(whole_back));
    m.def("fitted_back", &fitted_back, py::arg("design"), py::arg("target_mm"), NoGil(),
          DOC(fitted_back));
    m.def("flush_targets", &flush_targets, py::arg("design"), NoGil(), DOC(flush_targets));
}

}  // namespace backspring::python

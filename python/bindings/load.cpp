#include "backspring/load/load_spring.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_load(py::module_& m) {
    py::class_<PullOut>(m, "PullOut", DOC(PullOut));
    py::class_<RearPinLast>(m, "RearPinLast", DOC(RearPinLast));
    py::class_<SpringLoading>(m, "SpringLoading", DOC(SpringLoading));
}

void define_load(py::module_& m) {
    auto pull = declared<PullOut>();
    define_record(pull, BACKSPRING_FIELD(PullOut, at_mm), BACKSPRING_FIELD(PullOut, clearance_mm),
                  BACKSPRING_FIELD(PullOut, lever_mm));
    auto last = declared<RearPinLast>();
    define_record(last, BACKSPRING_FIELD(RearPinLast, hole_to_go_mm),
                  BACKSPRING_FIELD(RearPinLast, force_n),
                  BACKSPRING_FIELD(RearPinLast, lever_force_n));
    auto loading = declared<SpringLoading>();
    define_record(
        loading, BACKSPRING_FIELD(SpringLoading, at_mm), BACKSPRING_FIELD(SpringLoading, pull),
        BACKSPRING_FIELD(SpringLoading, force_n), BACKSPRING_FIELD(SpringLoading, movement_mm),
        BACKSPRING_FIELD(SpringLoading, clears_last_mm),
        BACKSPRING_FIELD(SpringLoading, peak_stress_mpa),
        BACKSPRING_FIELD(SpringLoading, peak_stress_station_mm),
        BACKSPRING_FIELD(SpringLoading, yield_margin),
        BACKSPRING_FIELD(SpringLoading, yield_margin_low),
        BACKSPRING_FIELD(SpringLoading, stop_before_mm),
        BACKSPRING_FIELD(SpringLoading, stop_before_low_mm),
        BACKSPRING_FIELD(SpringLoading, rear_pin_force_n),
        BACKSPRING_FIELD(SpringLoading, middle_pin_force_n),
        BACKSPRING_FIELD(SpringLoading, rear_pin_last),
        BACKSPRING_FIELD(SpringLoading, wanted_margin), BACKSPRING_FIELD(SpringLoading, met));
    m.attr("LEAST_PULL_STATION_MM") = kLeastPullStationMm;
    m.def("nearest_pull_mm", &nearest_pull_mm, py::arg("design"), DOC(nearest_pull_mm));
    m.def("load_spring", py::overload_cast<const Design&, const PullOut&>(&load_spring),
          py::arg("design"), py::arg("pull"), py::call_guard<py::gil_scoped_release>(),
          DOC(load_spring));
}

}  // namespace backspring::python

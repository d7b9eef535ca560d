#include "backspring/fit/bench_figures.hpp"

#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_bench_figures(py::module_& m) {
    py::class_<BenchFigures>(m, "BenchFigures", DOC(BenchFigures));
    py::class_<ClosedFigures>(m, "ClosedFigures", DOC(ClosedFigures));
}

void define_bench_figures(py::module_& m) {
    using NoGil = py::call_guard<py::gil_scoped_release>;
    auto figures = declared<BenchFigures>();
    define_record(figures, BACKSPRING_FIELD(BenchFigures, start_pull_n),
                  BACKSPRING_FIELD(BenchFigures, peak_pull_n),
                  BACKSPRING_FIELD(BenchFigures, closing_peak_pull_n),
                  BACKSPRING_FIELD(BenchFigures, travel_peak_stress_mpa));
    auto closed = declared<ClosedFigures>();
    define_record(closed, BACKSPRING_FIELD(ClosedFigures, tip_mm),
                  BACKSPRING_FIELD(ClosedFigures, gap_mm));
    m.def("bench_figures", &bench_figures, py::arg("design"), argument("unknowns", FitUnknowns{}),
          NoGil(), DOC(bench_figures));
    m.def("hung_movement_mm", &hung_movement_mm, py::arg("design"), py::arg("weight_n"),
          py::arg("station_mm"), argument("unknowns", FitUnknowns{}), NoGil(),
          DOC(hung_movement_mm));
    m.def("closed_figures", &closed_figures, py::arg("design"), py::arg("station_mm"),
          argument("unknowns", FitUnknowns{}), NoGil(), DOC(closed_figures));
}

}  // namespace backspring::python

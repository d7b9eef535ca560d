#include "backspring/fit/levers.hpp"

#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_levers(py::module_& m) {
    py::native_enum<LeverFace>(m, "LeverFace", "enum.Enum", DOC(LeverFace))
        .value("half_stop", LeverFace::half_stop)
        .value("closed", LeverFace::closed)
        .value("kick", LeverFace::kick)
        .value("open", LeverFace::open)
        .value("back", LeverFace::back)
        .value("belly", LeverFace::belly)
        .finalize();
    py::class_<Lever>(m, "Lever", DOC(Lever));
}

void define_levers(py::module_& m) {
    using NoGil = py::call_guard<py::gil_scoped_release>;
    auto lever = declared<Lever>();
    define_record(lever, BACKSPRING_FIELD(Lever, face), BACKSPRING_FIELD(Lever, half_stop_mm),
                  BACKSPRING_FIELD(Lever, closed_mm), BACKSPRING_FIELD(Lever, tip_mm),
                  BACKSPRING_FIELD(Lever, edge_gap_mm), BACKSPRING_FIELD(Lever, peak_pull_n),
                  BACKSPRING_FIELD(Lever, yield_margin));
    m.attr("LEVER_DEPTH_MM") = kLeverDepthMm;
    m.def("levers", &levers, py::arg("design"), NoGil(), DOC(levers));
}

}  // namespace backspring::python

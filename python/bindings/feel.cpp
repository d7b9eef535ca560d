#include "backspring/check/feel.hpp"

#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_feel(py::module_& m) {
    py::class_<SeatStiffness>(m, "SeatStiffness", DOC(SeatStiffness));
    py::class_<Feel>(m, "Feel", DOC(Feel));
}

void define_feel(py::module_& m) {
    auto seat = declared<SeatStiffness>();
    define_record(seat, BACKSPRING_FIELD(SeatStiffness, open_nmm_per_deg),
                  BACKSPRING_FIELD(SeatStiffness, half_stop_nmm_per_deg),
                  BACKSPRING_FIELD(SeatStiffness, closed_nmm_per_deg));
    auto result = declared<Feel>();
    define_record(result, BACKSPRING_FIELD(Feel, rise_mm), BACKSPRING_FIELD(Feel, evenness),
                  BACKSPRING_FIELD(Feel, seat), BACKSPRING_FIELD(Feel, dial_lift_mm),
                  BACKSPRING_FIELD(Feel, pull_oiled_n), BACKSPRING_FIELD(Feel, pull_dry_n));
    m.def("oiled", &oiled, py::arg("friction"), DOC(oiled));
    m.def("dry", &dry, py::arg("friction"), DOC(dry));
    m.attr("USUAL_FRICTION") = kUsualFriction;
    m.attr("FRICTION_SPREAD") = kFrictionSpread;
    m.def("feel", py::overload_cast<const Design&>(&feel), py::arg("design"),
          py::call_guard<py::gil_scoped_release>(), DOC(feel));
}

}  // namespace backspring::python

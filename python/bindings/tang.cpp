#include "backspring/tang/tang.hpp"

#include "backspring/tang/outline.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_tang(py::module_& m) {
    py::class_<Kick>(m, "Kick", DOC(Kick));
    py::class_<Tang>(m, "Tang", DOC(Tang));
    py::class_<Arc>(m, "Arc", DOC(Arc));
    py::class_<Outline>(m, "Outline", DOC(Outline));
}

void define_tang(py::module_& m) {
    auto kick = declared<Kick>();
    define_record(kick, BACKSPRING_FIELD(Kick, distance_mm), BACKSPRING_FIELD(Kick, height_mm),
                  BACKSPRING_FIELD(Kick, radius_mm));
    auto tang = declared<Tang>();
    define_record(tang, BACKSPRING_FIELD(Tang, pivot_mm), BACKSPRING_FIELD(Tang, open_mm),
                  BACKSPRING_FIELD(Tang, half_stop_mm), BACKSPRING_FIELD(Tang, closed_mm),
                  BACKSPRING_FIELD(Tang, corner_open_mm), BACKSPRING_FIELD(Tang, corner_closed_mm),
                  BACKSPRING_FIELD(Tang, front_mm), BACKSPRING_FIELD(Tang, round_end_mm),
                  BACKSPRING_FIELD(Tang, kick), BACKSPRING_FIELD(Tang, pivot_clearance_mm));
    auto arc = declared<Arc>();
    define_record(arc, BACKSPRING_FIELD(Arc, u_mm), BACKSPRING_FIELD(Arc, w_mm),
                  BACKSPRING_FIELD(Arc, radius_mm), BACKSPRING_FIELD(Arc, from_rad),
                  BACKSPRING_FIELD(Arc, to_rad));
    auto outline = declared<Outline>();
    define_record(outline, BACKSPRING_FIELD(Outline, body), BACKSPRING_FIELD(Outline, kick));
    m.def("make_outline", &make_outline, py::arg("tang"), py::arg("reach_mm"), DOC(make_outline));
    m.def("round_end_radius_mm", &round_end_radius_mm, py::arg("tang"), DOC(round_end_radius_mm));
    m.def("rear_reach_mm", &rear_reach_mm, py::arg("tang"), DOC(rear_reach_mm));
    m.def("swept_radius_mm", &swept_radius_mm, py::arg("outline"), DOC(swept_radius_mm));
}

}  // namespace backspring::python

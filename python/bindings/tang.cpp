#include "backspring/tang/tang.hpp"

#include "backspring/tang/drawn_outline.hpp"
#include "backspring/tang/outline.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_tang(py::module_& m) {
    py::class_<Kick>(m, "Kick", DOC(Kick));
    py::class_<OutlinePoint>(m, "OutlinePoint", DOC(OutlinePoint));
    py::class_<Tang>(m, "Tang", DOC(Tang));
    py::class_<Arc>(m, "Arc", DOC(Arc));
    py::class_<Outline>(m, "Outline", DOC(Outline));
    py::class_<RestingSide>(m, "RestingSide", DOC(RestingSide));
    py::class_<DrawnFaces>(m, "DrawnFaces", DOC(DrawnFaces));
    py::native_enum<OutlineFlaw>(m, "OutlineFlaw", "enum.Enum", DOC(OutlineFlaw))
        .value("none", OutlineFlaw::none, DOC(OutlineFlaw_none))
        .value("too_few", OutlineFlaw::too_few, DOC(OutlineFlaw_too_few))
        .value("not_convex", OutlineFlaw::not_convex, DOC(OutlineFlaw_not_convex))
        .value("pivot_outside", OutlineFlaw::pivot_outside, DOC(OutlineFlaw_pivot_outside))
        .finalize();
}

void define_tang(py::module_& m) {
    auto kick = declared<Kick>();
    define_record(kick, BACKSPRING_FIELD(Kick, distance_mm), BACKSPRING_FIELD(Kick, height_mm),
                  BACKSPRING_FIELD(Kick, radius_mm));
    auto point = declared<OutlinePoint>();
    define_record(point, BACKSPRING_FIELD(OutlinePoint, u_mm), BACKSPRING_FIELD(OutlinePoint, w_mm),
                  BACKSPRING_FIELD(OutlinePoint, bulge));
    auto tang = declared<Tang>();
    define_record(tang, BACKSPRING_FIELD(Tang, pivot_mm), BACKSPRING_FIELD(Tang, open_mm),
                  BACKSPRING_FIELD(Tang, half_stop_mm), BACKSPRING_FIELD(Tang, closed_mm),
                  BACKSPRING_FIELD(Tang, corner_open_mm), BACKSPRING_FIELD(Tang, corner_closed_mm),
                  BACKSPRING_FIELD(Tang, front_mm), BACKSPRING_FIELD(Tang, round_end_mm),
                  BACKSPRING_FIELD(Tang, kick), BACKSPRING_FIELD(Tang, pivot_clearance_mm),
                  BACKSPRING_FIELD(Tang, outline));
    auto arc = declared<Arc>();
    define_record(arc, BACKSPRING_FIELD(Arc, u_mm), BACKSPRING_FIELD(Arc, w_mm),
                  BACKSPRING_FIELD(Arc, radius_mm), BACKSPRING_FIELD(Arc, from_rad),
                  BACKSPRING_FIELD(Arc, to_rad));
    auto outline = declared<Outline>();
    define_record(outline, BACKSPRING_FIELD(Outline, body), BACKSPRING_FIELD(Outline, kick),
                  BACKSPRING_FIELD(Outline, end_rad), BACKSPRING_FIELD(Outline, closed_rad));
    auto side = declared<RestingSide>();
    define_record(
        side, BACKSPRING_FIELD(RestingSide, normal_rad), BACKSPRING_FIELD(RestingSide, distance_mm),
        BACKSPRING_FIELD(RestingSide, length_mm), BACKSPRING_FIELD(RestingSide, blade_angle_deg));
    auto faces = declared<DrawnFaces>();
    define_record(faces, BACKSPRING_FIELD(DrawnFaces, open_mm),
                  BACKSPRING_FIELD(DrawnFaces, half_stop_mm),
                  BACKSPRING_FIELD(DrawnFaces, closed_mm), BACKSPRING_FIELD(DrawnFaces, end_rad),
                  BACKSPRING_FIELD(DrawnFaces, closed_rad), BACKSPRING_FIELD(DrawnFaces, others));
    m.def("make_outline", &make_outline, py::arg("tang"), py::arg("reach_mm"), DOC(make_outline));
    m.def("round_end_radius_mm", &round_end_radius_mm, py::arg("tang"), DOC(round_end_radius_mm));
    m.def(
        "flaw_of", [](const std::vector<OutlinePoint>& rows) { return flaw_of(rows); },
        py::arg("outline"), DOC(flaw_of));
    m.def(
        "arcs_of", [](const std::vector<OutlinePoint>& rows) { return arcs_of(rows); },
        py::arg("outline"), DOC(arcs_of));
    m.def(
        "faces_of", [](const std::vector<Arc>& arcs) { return faces_of(arcs); }, py::arg("arcs"),
        DOC(faces_of));
    m.def("tang_with_outline", &tang_with_outline, py::arg("tang"), py::arg("outline"),
          DOC(tang_with_outline));
    m.def("front_reach_mm", &front_reach_mm, py::arg("tang"), DOC(front_reach_mm));
    m.def("rear_reach_mm", &rear_reach_mm, py::arg("tang"), DOC(rear_reach_mm));
    m.def("swept_radius_mm", &swept_radius_mm, py::arg("outline"), DOC(swept_radius_mm));
}

}  // namespace backspring::python

#include "backspring/strength/curved_beam.hpp"
#include "backspring/strength/hole_edge.hpp"
#include "backspring/strength/kink.hpp"
#include "backspring/strength/notch_sensitivity.hpp"
#include "backspring/strength/shoulder.hpp"
#include "backspring/strength/torsion.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {
namespace {

void define_hole_edge(py::module_& m) {
    auto local = declared<LocalStress>();
    define_record(local, BACKSPRING_FIELD(LocalStress, nominal_mpa),
                  BACKSPRING_FIELD(LocalStress, factor), BACKSPRING_FIELD(LocalStress, local_mpa),
                  BACKSPRING_FIELD(LocalStress, station_mm));
    m.def("local_stress", &local_stress, py::arg("nominal_mpa"), py::arg("factor"),
          py::arg("station_mm"), DOC(local_stress));
    m.def("hole_tension_factor", &hole_tension_factor, py::arg("diameter_ratio"),
          DOC(hole_tension_factor));
    m.def("hole_edge_stress", &hole_edge_stress, py::arg("thickness_mm"), py::arg("width_mm"),
          py::arg("hole"), py::arg("moment_nmm"), DOC(hole_edge_stress));
}

void define_belly(py::module_& m) {
    auto kink = declared<Kink>();
    define_record(kink, BACKSPRING_FIELD(Kink, station_mm), BACKSPRING_FIELD(Kink, thickness_mm),
                  BACKSPRING_FIELD(Kink, angle_rad));
    m.def("torsion_constant_mm4", &torsion_constant_mm4, py::arg("width_mm"),
          py::arg("thickness_mm"), DOC(torsion_constant_mm4));
    m.def("find_kinks", py::overload_cast<const Profile&>(&find_kinks), py::arg("profile"),
          DOC(find_kinks));
    m.def("kink_factor", &kink_factor, py::arg("angle_rad"), py::arg("thickness_mm"),
          py::arg("root_radius_mm"), DOC(kink_factor));
    auto shoulder = declared<Shoulder>();
    define_record(shoulder, BACKSPRING_FIELD(Shoulder, station_mm),
                  BACKSPRING_FIELD(Shoulder, large_mm), BACKSPRING_FIELD(Shoulder, small_mm));
    m.def("find_shoulders", &find_shoulders, py::arg("profile"), DOC(find_shoulders));
    m.def("shoulder_factor", &shoulder_factor, py::arg("large_mm"), py::arg("small_mm"),
          py::arg("fillet_mm"), DOC(shoulder_factor));
    m.def("one_sided_shoulder_factor", &one_sided_shoulder_factor, py::arg("large_mm"),
          py::arg("small_mm"), py::arg("fillet_mm"), DOC(one_sided_shoulder_factor));
}

void define_curved_beam(py::module_& m) {
    auto section = declared<CurvedSection>();
    define_fields(section, BACKSPRING_FIELD(CurvedSection, thickness_mm),
                  BACKSPRING_FIELD(CurvedSection, width_mm),
                  BACKSPRING_FIELD(CurvedSection, inner_radius_mm),
                  BACKSPRING_FIELD(CurvedSection, outer_radius_mm),
                  BACKSPRING_FIELD(CurvedSection, centroid_radius_mm),
                  BACKSPRING_FIELD(CurvedSection, neutral_radius_mm),
                  BACKSPRING_FIELD(CurvedSection, shift_mm));
    auto stress = declared<CurvedStress>();
    define_record(stress, BACKSPRING_FIELD(CurvedStress, inner_mpa),
                  BACKSPRING_FIELD(CurvedStress, outer_mpa));
    auto factors = declared<CurvatureFactors>();
    define_record(factors, BACKSPRING_FIELD(CurvatureFactors, inner),
                  BACKSPRING_FIELD(CurvatureFactors, outer));
    m.def("make_curved_section", &make_curved_section, py::arg("width_mm"), py::arg("thickness_mm"),
          py::arg("inner_radius_mm"), DOC(make_curved_section));
    m.def("curved_stress", &curved_stress, py::arg("section"), py::arg("moment_nmm"),
          py::arg("normal_n") = 0.0, DOC(curved_stress));
    m.def("curvature_factors", &curvature_factors, py::arg("thickness_mm"),
          py::arg("inner_radius_mm"), DOC(curvature_factors));
}

void define_sensitivity(py::module_& m) {
    m.def("neuber_root_length", &neuber_root_length, py::arg("tensile_mpa"),
          DOC(neuber_root_length));
    m.def("notch_sensitivity", &notch_sensitivity, py::arg("tensile_mpa"),
          py::arg("root_radius_mm"), DOC(notch_sensitivity));
    m.def("fatigue_notch_factor", &fatigue_notch_factor, py::arg("factor"), py::arg("sensitivity"),
          DOC(fatigue_notch_factor));
}

}  // namespace

void declare_notch(py::module_& m) {
    py::class_<LocalStress>(m, "LocalStress", DOC(LocalStress));
    py::class_<Kink>(m, "Kink", DOC(Kink));
    py::class_<Shoulder>(m, "Shoulder", DOC(Shoulder));
    py::class_<CurvedSection>(m, "CurvedSection", DOC(CurvedSection));
    py::class_<CurvedStress>(m, "CurvedStress", DOC(CurvedStress));
    py::class_<CurvatureFactors>(m, "CurvatureFactors", DOC(CurvatureFactors));
}

void define_notch(py::module_& m) {
    define_hole_edge(m);
    define_belly(m);
    define_curved_beam(m);
    define_sensitivity(m);
}

}  // namespace backspring::python

#include "backspring/strength/plastic_set.hpp"

#include "backspring/strength/plastic_bending.hpp"
#include "backspring/strength/plastic_strain.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {
namespace {

void define_plastic_section(py::module_& m) {
    auto section = declared<PlasticSection>();
    define_fields(
        section, BACKSPRING_FIELD(PlasticSection, width_mm),
        BACKSPRING_FIELD(PlasticSection, thickness_mm), BACKSPRING_FIELD(PlasticSection, chord_mm),
        BACKSPRING_FIELD(PlasticSection, offset_mm),
        BACKSPRING_FIELD(PlasticSection, youngs_modulus_mpa),
        BACKSPRING_FIELD(PlasticSection, yield_mpa), BACKSPRING_FIELD(PlasticSection, inertia_mm4),
        BACKSPRING_FIELD(PlasticSection, outer_mm),
        BACKSPRING_FIELD(PlasticSection, yield_moment_nmm),
        BACKSPRING_FIELD(PlasticSection, plastic_moment_nmm),
        BACKSPRING_FIELD(PlasticSection, yield_curvature_per_mm));
    auto bent = declared<SectionBend>();
    define_record(bent, BACKSPRING_FIELD(SectionBend, curvature_per_mm),
                  BACKSPRING_FIELD(SectionBend, core_mm),
                  BACKSPRING_FIELD(SectionBend, neutral_mm));
    auto stress = declared<ResidualStress>();
    define_record(stress, BACKSPRING_FIELD(ResidualStress, surface_mpa),
                  BACKSPRING_FIELD(ResidualStress, core_edge_mpa));
    m.def("make_plastic_section", &make_plastic_section, py::arg("width_mm"),
          py::arg("thickness_mm"), py::arg("youngs_modulus_mpa"), py::arg("yield_mpa"),
          py::arg("chord_mm") = 0.0, py::arg("offset_mm") = 0.0, DOC(make_plastic_section));
    m.def("bend_section", &bend_section, py::arg("section"), py::arg("moment_nmm"),
          DOC(bend_section));
    m.def("residual_curvature_per_mm", &residual_curvature_per_mm, py::arg("section"),
          py::arg("moment_nmm"), DOC(residual_curvature_per_mm));
    m.def("residual_stress", &residual_stress, py::arg("section"), py::arg("moment_nmm"),
          DOC(residual_stress));
    m.def("notch_plastic_strain", &notch_plastic_strain, py::arg("local_mpa"), py::arg("yield_mpa"),
          py::arg("youngs_modulus_mpa"), DOC(notch_plastic_strain));
    m.def("fold_plastic_strain", &fold_plastic_strain, py::arg("turn_rad"), py::arg("thickness_mm"),
          py::arg("chord_mm"), DOC(fold_plastic_strain));
    m.def("elongation", &elongation, py::arg("tensile_mpa"), DOC(elongation));
    m.def("yielded_depth_mm", &yielded_depth_mm, py::arg("section"), py::arg("moment_nmm"),
          DOC(yielded_depth_mm));
}

void define_bent_spring(py::module_& m) {
    using Loads = std::vector<Load>;
    using Holds = std::vector<Hold>;
    auto hold = declared<Hold>();
    define_record(hold, BACKSPRING_FIELD(Hold, x_mm), BACKSPRING_FIELD(Hold, rise_mm));
    auto shift = declared<FaceShift>();
    define_record(shift, BACKSPRING_FIELD(FaceShift, height_mm),
                  BACKSPRING_FIELD(FaceShift, slope));
    shift.def("at_mm", &FaceShift::at_mm, py::arg("x_mm"), DOC(FaceShift_at_mm));
    auto zone = declared<PlasticZone>();
    define_record(zone, BACKSPRING_FIELD(PlasticZone, from_mm),
                  BACKSPRING_FIELD(PlasticZone, to_mm), BACKSPRING_FIELD(PlasticZone, deepest_mm),
                  BACKSPRING_FIELD(PlasticZone, depth_mm), BACKSPRING_FIELD(PlasticZone, strain),
                  BACKSPRING_FIELD(PlasticZone, turn_rad),
                  BACKSPRING_FIELD(PlasticZone, residual_surface_mpa));
    auto bent = declared<BentSpring>();
    define_record(bent, BACKSPRING_FIELD(BentSpring, loads), BACKSPRING_FIELD(BentSpring, shift),
                  BACKSPRING_FIELD(BentSpring, zones));
    m.def(
        "bend_by_force",
        [](const Spring& s, const Loads& l, double y) { return bend_by_force(s, l, y); },
        py::arg("spring"), py::arg("loads"), py::arg("yield_mpa"), DOC(bend_by_force));
    m.def(
        "bend_by_hold",
        [](const Spring& s, const Holds& h, double y) { return bend_by_hold(s, h, y); },
        py::arg("spring"), py::arg("holds"), py::arg("yield_mpa"), DOC(bend_by_hold));
}

}  // namespace

void declare_plastic_set(py::module_& m) {
    py::class_<PlasticSection>(m, "PlasticSection", DOC(PlasticSection));
    py::class_<SectionBend>(m, "SectionBend", DOC(SectionBend));
    py::class_<ResidualStress>(m, "ResidualStress", DOC(ResidualStress));
    py::class_<Hold>(m, "Hold", DOC(Hold));
    py::class_<FaceShift>(m, "FaceShift", DOC(FaceShift));
    py::class_<PlasticZone>(m, "PlasticZone", DOC(PlasticZone));
    py::class_<BentSpring>(m, "BentSpring", DOC(BentSpring));
    py::class_<PlasticSet>(m, "PlasticSet", DOC(PlasticSet));
    py::class_<PeakTorques>(m, "PeakTorques", DOC(PeakTorques));
}

void define_plastic_set(py::module_& m) {
    define_plastic_section(m);
    define_bent_spring(m);
    auto set = declared<PlasticSet>();
    define_record(
        set, BACKSPRING_FIELD(PlasticSet, yielded), BACKSPRING_FIELD(PlasticSet, blade_angle_deg),
        BACKSPRING_FIELD(PlasticSet, elastic_force_n), BACKSPRING_FIELD(PlasticSet, force_n),
        BACKSPRING_FIELD(PlasticSet, shift), BACKSPRING_FIELD(PlasticSet, shift_opened),
        BACKSPRING_FIELD(PlasticSet, drop_pivot_mm), BACKSPRING_FIELD(PlasticSet, drop_dial_mm),
        BACKSPRING_FIELD(PlasticSet, drop_pad_start_mm),
        BACKSPRING_FIELD(PlasticSet, drop_pad_end_mm),
        BACKSPRING_FIELD(PlasticSet, preload_before_mm),
        BACKSPRING_FIELD(PlasticSet, preload_opened_mm),
        BACKSPRING_FIELD(PlasticSet, preload_after_shakedown_mm),
        BACKSPRING_FIELD(PlasticSet, openings_to_shakedown),
        BACKSPRING_FIELD(PlasticSet, shakes_down), BACKSPRING_FIELD(PlasticSet, contacts),
        BACKSPRING_FIELD(PlasticSet, folded), BACKSPRING_FIELD(PlasticSet, zones));
    auto torques = declared<PeakTorques>();
    define_record(torques, BACKSPRING_FIELD(PeakTorques, before_nmm),
                  BACKSPRING_FIELD(PeakTorques, after_nmm));
}

}  // namespace backspring::python

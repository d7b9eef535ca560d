#include "backspring/spring/bending.hpp"
#include "backspring/spring/flexibility.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {
namespace {

using Loads = std::vector<Load>;

void define_shape() {
    auto station = declared<Station>();
    define_record(station, BACKSPRING_FIELD(Station, x_mm),
                  BACKSPRING_FIELD(Station, thickness_mm));
    auto hole = declared<Hole>();
    define_record(hole, BACKSPRING_FIELD(Hole, center_mm), BACKSPRING_FIELD(Hole, diameter_mm),
                  BACKSPRING_FIELD(Hole, offset_mm), BACKSPRING_FIELD(Hole, pin));
    auto support = declared<Support>();
    define_record(support, BACKSPRING_FIELD(Support, kind), BACKSPRING_FIELD(Support, rear_pin_mm),
                  BACKSPRING_FIELD(Support, root_stiffness_nmm_per_rad));
    auto pad = declared<Pad>();
    define_record(pad, BACKSPRING_FIELD(Pad, start_mm), BACKSPRING_FIELD(Pad, end_mm));
    auto clearance = declared<PinClearance>();
    define_record(clearance, BACKSPRING_FIELD(PinClearance, middle_mm),
                  BACKSPRING_FIELD(PinClearance, rear_mm));
    auto width = declared<WidthStation>();
    define_record(width, BACKSPRING_FIELD(WidthStation, x_mm),
                  BACKSPRING_FIELD(WidthStation, width_mm));
    auto point = declared<MidLinePoint>();
    define_record(point, BACKSPRING_FIELD(MidLinePoint, x_mm),
                  BACKSPRING_FIELD(MidLinePoint, height_mm));
    auto spring = declared<Spring>();
    define_record(spring, BACKSPRING_FIELD(Spring, thickness), BACKSPRING_FIELD(Spring, width_mm),
                  BACKSPRING_FIELD(Spring, support), BACKSPRING_FIELD(Spring, holes),
                  BACKSPRING_FIELD(Spring, elastic), BACKSPRING_FIELD(Spring, pin_clearance),
                  BACKSPRING_FIELD(Spring, widths), BACKSPRING_FIELD(Spring, mid_line));
}

void define_section(py::module_& m) {
    auto section = declared<Section>();
    define_record(section, BACKSPRING_FIELD(Section, area_mm2),
                  BACKSPRING_FIELD(Section, inertia_mm4), BACKSPRING_FIELD(Section, back_mm),
                  BACKSPRING_FIELD(Section, belly_mm));
    m.def("make_section", &make_section, py::arg("width_mm"), py::arg("thickness_mm"),
          py::arg("chord_mm") = 0.0, py::arg("offset_mm") = 0.0, DOC(make_section));
    m.def("outer_stress_per_moment", &outer_stress_per_moment, py::arg("section"),
          DOC(outer_stress_per_moment));
    m.def("section_at", &section_at, py::arg("spring"), py::arg("x_mm"), DOC(section_at));
    m.def("thickness_mm", py::overload_cast<const Profile&, double>(&thickness_mm),
          py::arg("profile"), py::arg("x_mm"), DOC(thickness_mm));
    m.def("width_at_mm", &width_at_mm, py::arg("spring"), py::arg("x_mm"), DOC(width_at_mm));
    m.def("mid_line_mm", &mid_line_mm, py::arg("spring"), py::arg("pad"), py::arg("x_mm"),
          DOC(mid_line_mm));
    m.def("belly_mm", &belly_mm, py::arg("spring"), py::arg("pad"), py::arg("x_mm"), DOC(belly_mm));
}

void define_flexibility(py::module_& m) {
    auto integrals = declared<BendingIntegrals>();
    define_record(integrals, BACKSPRING_FIELD(BendingIntegrals, a0),
                  BACKSPRING_FIELD(BendingIntegrals, a1), BACKSPRING_FIELD(BendingIntegrals, a2),
                  BACKSPRING_FIELD(BendingIntegrals, shear));
    declared<Flexibility>().def_readonly("root_rotation_rad_per_nmm",
                                         &Flexibility::root_rotation_rad_per_nmm,
                                         DOC(Flexibility_root_rotation_rad_per_nmm));
    m.def("make_flexibility", &make_flexibility, py::arg("spring"), DOC(make_flexibility));
    m.def("bending_integrals", &bending_integrals, py::arg("flexibility"), py::arg("x_mm"),
          DOC(bending_integrals));
    m.def("deflection_per_force", &deflection_per_force, py::arg("flexibility"), py::arg("x_mm"),
          py::arg("xi_mm"), DOC(deflection_per_force));
    m.def("slope_per_force", &slope_per_force, py::arg("flexibility"), py::arg("x_mm"),
          py::arg("xi_mm"), DOC(slope_per_force));
}

void define_bending(py::module_& m) {
    auto load = declared<Load>();
    define_record(load, BACKSPRING_FIELD(Load, x_mm), BACKSPRING_FIELD(Load, force_n));
    auto pins = declared<PinForces>();
    define_record(pins, BACKSPRING_FIELD(PinForces, middle_n), BACKSPRING_FIELD(PinForces, rear_n));
    auto fibre = declared<FibreStress>();
    define_record(fibre, BACKSPRING_FIELD(FibreStress, back_mpa),
                  BACKSPRING_FIELD(FibreStress, belly_mpa));
    auto peak = declared<PeakStress>();
    define_record(peak, BACKSPRING_FIELD(PeakStress, stress_mpa),
                  BACKSPRING_FIELD(PeakStress, station_mm));
    m.def(
        "bending_moment_nmm",
        [](const Spring& s, const Loads& l, double x) { return bending_moment_nmm(s, l, x); },
        py::arg("spring"), py::arg("loads"), py::arg("x_mm"), DOC(bending_moment_nmm));
    m.def(
        "pin_forces", [](const Spring& s, const Loads& l) { return pin_forces(s, l); },
        py::arg("spring"), py::arg("loads"), DOC(pin_forces));
    m.def(
        "fibre_stress",
        [](const Spring& s, const Loads& l, double x) { return fibre_stress(s, l, x); },
        py::arg("spring"), py::arg("loads"), py::arg("x_mm"), DOC(fibre_stress));
    m.def("make_stress_probe", &make_stress_probe, py::arg("spring"), DOC(make_stress_probe));
    m.def(
        "peak_stress", [](const StressProbe& p, const Loads& l) { return peak_stress(p, l); },
        py::arg("probe"), py::arg("loads"), DOC(peak_stress));
}

}  // namespace

void declare_spring(py::module_& m) {
    py::native_enum<SupportKind>(m, "SupportKind", "enum.Enum", DOC(SupportKind))
        .value("two_pins", SupportKind::two_pins, DOC(SupportKind_two_pins))
        .value("clamped", SupportKind::clamped, DOC(SupportKind_clamped))
        .value("root_stiffness", SupportKind::root_stiffness, DOC(SupportKind_root_stiffness))
        .finalize();
    py::class_<Station>(m, "Station", DOC(Station));
    py::class_<WidthStation>(m, "WidthStation", DOC(WidthStation));
    py::class_<MidLinePoint>(m, "MidLinePoint", DOC(MidLinePoint));
    py::native_enum<HoleFor>(m, "HoleFor", "enum.Enum", DOC(HoleFor))
        .value("neither", HoleFor::neither, DOC(HoleFor_neither))
        .value("middle_pin", HoleFor::middle_pin, DOC(HoleFor_middle_pin))
        .value("rear_pin", HoleFor::rear_pin, DOC(HoleFor_rear_pin))
        .finalize();
    py::class_<Hole>(m, "Hole", DOC(Hole));
    py::class_<Support>(m, "Support", DOC(Support));
    py::class_<Pad>(m, "Pad", DOC(Pad));
    py::class_<PinClearance>(m, "PinClearance", DOC(PinClearance));
    py::class_<Spring>(m, "Spring", DOC(Spring));
    py::class_<Section>(m, "Section", DOC(Section));
    py::class_<BendingIntegrals>(m, "BendingIntegrals", DOC(BendingIntegrals));
    py::class_<Flexibility>(m, "Flexibility", DOC(Flexibility));
    py::class_<Load>(m, "Load", DOC(Load));
    py::class_<PinForces>(m, "PinForces", DOC(PinForces));
    py::class_<FibreStress>(m, "FibreStress", DOC(FibreStress));
    py::class_<PeakStress>(m, "PeakStress", DOC(PeakStress));
    py::class_<StressProbe>(m, "StressProbe", DOC(StressProbe));
}

void define_spring(py::module_& m) {
    define_shape();
    define_section(m);
    define_flexibility(m);
    define_bending(m);
}

}  // namespace backspring::python

#include "backspring/strength/contact_pressure.hpp"

#include "backspring/strength/bearing_pressure.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_contact_pressure(py::module_& m) {
    py::native_enum<Bearer>(m, "Bearer", "enum.Enum", DOC(Bearer))
        .value("open_front", Bearer::open_front, DOC(Bearer_open_front))
        .value("open_corner", Bearer::open_corner, DOC(Bearer_open_corner))
        .value("round_end", Bearer::round_end, DOC(Bearer_round_end))
        .value("closed_corner", Bearer::closed_corner, DOC(Bearer_closed_corner))
        .value("closed_front", Bearer::closed_front, DOC(Bearer_closed_front))
        .value("kick", Bearer::kick, DOC(Bearer_kick))
        .value("flat", Bearer::flat, DOC(Bearer_flat))
        .value("pad_edge", Bearer::pad_edge, DOC(Bearer_pad_edge))
        .finalize();
    py::class_<LineContact>(m, "LineContact", DOC(LineContact));
    py::class_<BearingPressure>(m, "BearingPressure", DOC(BearingPressure));
}

void define_contact_pressure(py::module_& m) {
    auto line = declared<LineContact>();
    define_record(line, BACKSPRING_FIELD(LineContact, half_width_mm),
                  BACKSPRING_FIELD(LineContact, peak_mpa), BACKSPRING_FIELD(LineContact, mean_mpa),
                  BACKSPRING_FIELD(LineContact, shear_mpa),
                  BACKSPRING_FIELD(LineContact, shear_depth_mm));
    auto bearing = declared<BearingPressure>();
    define_record(
        bearing, BACKSPRING_FIELD(BearingPressure, bearer),
        BACKSPRING_FIELD(BearingPressure, radius_mm), BACKSPRING_FIELD(BearingPressure, force_n),
        BACKSPRING_FIELD(BearingPressure, blade_angle_deg),
        BACKSPRING_FIELD(BearingPressure, station_mm), BACKSPRING_FIELD(BearingPressure, line));
    m.def("contact_modulus_mpa", &contact_modulus_mpa, py::arg("one"), py::arg("other"),
          DOC(contact_modulus_mpa));
    m.def("line_contact", &line_contact, py::arg("force_n"), py::arg("length_mm"),
          py::arg("radius_mm"), py::arg("modulus_mpa"), DOC(line_contact));
    m.def("first_yield_pressure_mpa", &first_yield_pressure_mpa, py::arg("yield_mpa"),
          DOC(first_yield_pressure_mpa));
    m.def("least_corner_radius_mm", &least_corner_radius_mm, py::arg("force_n"),
          py::arg("length_mm"), py::arg("modulus_mpa"), py::arg("limit_mpa"),
          DOC(least_corner_radius_mm));
    m.def("galling_caution", &galling_caution, py::arg("tang_hrc"), py::arg("spring_hrc"),
          DOC(galling_caution));
    m.attr("GALLING_GAP_HRC") = kGallingGapHrc;
}

}  // namespace backspring::python

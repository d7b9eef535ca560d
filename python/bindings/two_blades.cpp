#include <pybind11/eigen.h>

#include "backspring/check/check_two.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_two_blades(py::module_& m) {
    py::class_<TwoBlades>(m, "TwoBlades", DOC(TwoBlades));
    py::class_<TwoContacts>(m, "TwoContacts", DOC(TwoContacts));
    py::class_<Beside>(m, "Beside", DOC(Beside));
    py::class_<TwoCheck>(m, "TwoCheck", DOC(TwoCheck));
}

void define_two_blades(py::module_& m) {
    using NoGil = py::call_guard<py::gil_scoped_release>;
    auto two = declared<TwoBlades>();
    define_record(two, BACKSPRING_FIELD(TwoBlades, first), BACKSPRING_FIELD(TwoBlades, second));
    auto contacts = declared<TwoContacts>();
    define_record(contacts, BACKSPRING_FIELD(TwoContacts, first),
                  BACKSPRING_FIELD(TwoContacts, second),
                  BACKSPRING_FIELD(TwoContacts, first_turn_rad),
                  BACKSPRING_FIELD(TwoContacts, second_turn_rad));
    auto beside = declared<Beside>();
    define_record(beside, BACKSPRING_FIELD(Beside, other), BACKSPRING_FIELD(Beside, positions),
                  BACKSPRING_FIELD(Beside, strokes), BACKSPRING_FIELD(Beside, travel),
                  BACKSPRING_FIELD(Beside, other_force_low_n),
                  BACKSPRING_FIELD(Beside, other_force_high_n));
    auto check = declared<TwoCheck>();
    define_record(check, BACKSPRING_FIELD(TwoCheck, first), BACKSPRING_FIELD(TwoCheck, second),
                  BACKSPRING_FIELD(TwoCheck, first_stiffness_n_per_mm),
                  BACKSPRING_FIELD(TwoCheck, second_stiffness_n_per_mm),
                  BACKSPRING_FIELD(TwoCheck, cross_rad_per_nmm),
                  BACKSPRING_FIELD(TwoCheck, targets), BACKSPRING_FIELD(TwoCheck, notices));
    m.def("second_end", &second_end, py::arg("two"), DOC(second_end));
    m.def("two_faults", py::overload_cast<const TwoBlades&>(&faults), py::arg("two"), DOC(faults));
    m.def("check_two", &check_two, py::arg("two"), py::arg("step_deg") = 1.0, NoGil(),
          DOC(check_two));
    m.def("two_contacts_at", &two_contacts_at, py::arg("two"), py::arg("first_deg"),
          py::arg("second_deg"), DOC(two_contacts_at));
    m.def("spring_along_two", &spring_along_two, py::arg("two"), py::arg("first_deg"),
          py::arg("second_deg"), py::arg("spacing_mm") = 0.1, NoGil(), DOC(spring_along_two));
    m.def("cross_rotation_rad_per_nmm", &cross_rotation_rad_per_nmm, py::arg("spring"),
          DOC(cross_rotation_rad_per_nmm));
}

}  // namespace backspring::python

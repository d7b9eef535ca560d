#include "backspring/steel/elastic.hpp"
#include "backspring/steel/hardness.hpp"
#include "backspring/steel/strength.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_steel(py::module_& m) {
    py::class_<Elastic>(m, "Elastic", DOC(Elastic));
    py::class_<Strength>(m, "Strength", DOC(Strength));
}

void define_steel(py::module_& m) {
    auto elastic = declared<Elastic>();
    define_record(elastic, BACKSPRING_FIELD(Elastic, youngs_modulus_mpa),
                  BACKSPRING_FIELD(Elastic, poisson));
    auto strength = declared<Strength>();
    define_record(strength, BACKSPRING_FIELD(Strength, yield_mpa),
                  BACKSPRING_FIELD(Strength, tensile_mpa));
    m.def("shear_modulus_mpa", &shear_modulus_mpa, py::arg("elastic"), DOC(shear_modulus_mpa));
    m.def("vickers_hv", &vickers_hv, py::arg("hardness_hrc"), DOC(vickers_hv));
    m.def("tensile_astm_mpa", &tensile_astm_mpa, py::arg("hardness_hrc"), DOC(tensile_astm_mpa));
    m.def("tensile_din_mpa", &tensile_din_mpa, py::arg("hardness_hrc"), DOC(tensile_din_mpa));
    m.def("tensile_mpa", &tensile_mpa, py::arg("hardness_hrc"), DOC(tensile_mpa));
    m.def("strength_from_hardness", &strength_from_hardness, py::arg("hardness_hrc"),
          py::arg("yield_ratio"), DOC(strength_from_hardness));
}

}  // namespace backspring::python

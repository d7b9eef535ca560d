#include "module.hpp"

PYBIND11_MODULE(_core, m, pybind11::mod_gil_not_used()) {
    using namespace backspring::python;
    m.doc() = "The compiled core: mm, N, MPa, degrees; same names as in C++.";
    m.attr("__version__") = BACKSPRING_VERSION;

    declare_core(m);
    declare_steel(m);
    declare_spring(m);
    declare_tang(m);
    declare_action(m);
    declare_design(m);

    define_core(m);
    define_steel(m);
    define_spring(m);
    define_tang(m);
    define_action(m);
    define_design(m);
}

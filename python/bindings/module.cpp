#include "module.hpp"

PYBIND11_MODULE(_core, m, pybind11::mod_gil_not_used()) {
    using namespace backspring::python;
    m.doc() = "The compiled core: mm, N, MPa, degrees; same names as in C++.";
    m.attr("__version__") = BACKSPRING_VERSION;

    declare_core(m);
    declare_steel(m);
    declare_temper(m);
    declare_spring(m);
    declare_tang(m);
    declare_action(m);
    declare_rap(m);
    declare_fatigue(m);
    declare_notch(m);
    declare_pins(m);
    declare_plastic_set(m);
    declare_contact_pressure(m);
    declare_verdict(m);
    declare_design(m);
    declare_feel(m);
    declare_budget(m);
    declare_field(m);
    declare_batch(m);
    declare_tolerance(m);
    declare_allowance(m);
    declare_bench_figures(m);
    declare_fit_plan(m);
    declare_levers(m);
    declare_least_squares(m);
    declare_grind(m);
    declare_load(m);
    declare_whole_back(m);
    declare_influence(m);
    declare_size(m);
    declare_turning_test(m);

    define_core(m);
    define_steel(m);
    define_temper(m);
    define_spring(m);
    define_tang(m);
    define_action(m);
    define_rap(m);
    define_fatigue(m);
    define_notch(m);
    define_pins(m);
    define_plastic_set(m);
    define_contact_pressure(m);
    define_verdict(m);
    define_design(m);
    define_feel(m);
    define_budget(m);
    define_field(m);
    define_batch(m);
    define_tolerance(m);
    define_allowance(m);
    define_bench_figures(m);
    define_fit_plan(m);
    define_levers(m);
    define_least_squares(m);
    define_grind(m);
    define_load(m);
    define_whole_back(m);
    define_influence(m);
    define_size(m);
    define_turning_test(m);
}

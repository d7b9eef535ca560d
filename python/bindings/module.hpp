#pragma once

#include <pybind11/pybind11.h>

#include <algorithm>
#include <string>
#include <string_view>

namespace backspring::python {

// Declared first, all of them, so that every signature shows Python's names.
void declare_core(pybind11::module_& m);
void declare_steel(pybind11::module_& m);
void declare_temper(pybind11::module_& m);
void declare_spring(pybind11::module_& m);
void declare_frame(pybind11::module_& m);
void declare_tang(pybind11::module_& m);
void declare_action(pybind11::module_& m);
void declare_rap(pybind11::module_& m);
void declare_fatigue(pybind11::module_& m);
void declare_notch(pybind11::module_& m);
void declare_pins(pybind11::module_& m);
void declare_plastic_set(pybind11::module_& m);
void declare_contact_pressure(pybind11::module_& m);
void declare_verdict(pybind11::module_& m);
void declare_design(pybind11::module_& m);
void declare_budget(pybind11::module_& m);
void declare_feel(pybind11::module_& m);
void declare_field(pybind11::module_& m);
void declare_batch(pybind11::module_& m);
void declare_tolerance(pybind11::module_& m);
void declare_allowance(pybind11::module_& m);
void declare_bench_figures(pybind11::module_& m);
void declare_fit_plan(pybind11::module_& m);
void declare_levers(pybind11::module_& m);
void declare_least_squares(pybind11::module_& m);
void declare_grind(pybind11::module_& m);
void declare_load(pybind11::module_& m);
void declare_whole_back(pybind11::module_& m);
void declare_influence(pybind11::module_& m);
void declare_size(pybind11::module_& m);
void declare_turning_test(pybind11::module_& m);

void define_core(pybind11::module_& m);
void define_steel(pybind11::module_& m);
void define_temper(pybind11::module_& m);
void define_spring(pybind11::module_& m);
void define_frame(pybind11::module_& m);
void define_tang(pybind11::module_& m);
void define_action(pybind11::module_& m);
void define_rap(pybind11::module_& m);
void define_fatigue(pybind11::module_& m);
void define_notch(pybind11::module_& m);
void define_pins(pybind11::module_& m);
void define_plastic_set(pybind11::module_& m);
void define_contact_pressure(pybind11::module_& m);
void define_verdict(pybind11::module_& m);
void define_design(pybind11::module_& m);
void define_budget(pybind11::module_& m);
void define_feel(pybind11::module_& m);
void define_field(pybind11::module_& m);
void define_batch(pybind11::module_& m);
void define_tolerance(pybind11::module_& m);
void define_allowance(pybind11::module_& m);
void define_bench_figures(pybind11::module_& m);
void define_fit_plan(pybind11::module_& m);
void define_levers(pybind11::module_& m);
void define_least_squares(pybind11::module_& m);
void define_grind(pybind11::module_& m);
void define_load(pybind11::module_& m);
void define_whole_back(pybind11::module_& m);
void define_influence(pybind11::module_& m);
void define_size(pybind11::module_& m);
void define_turning_test(pybind11::module_& m);

/// A fixed name as Python can write it: "hole-edge" becomes hole_edge, "yield" becomes yield_.
inline std::string identifier(std::string_view name) {
    std::string text(name);
    std::replace(text.begin(), text.end(), '-', '_');
    return text == "yield" ? text + "_" : text;
}

/// The class of a type declared before.
template <class Type>
pybind11::class_<Type> declared() {
    return pybind11::reinterpret_borrow<pybind11::class_<Type>>(pybind11::type::of<Type>());
}

}  // namespace backspring::python

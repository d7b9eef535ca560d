#include "backspring/steel/temper.hpp"

#include "backspring/steel/temper_table.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_temper(py::module_& m) {
    py::class_<Heat>(m, "Heat", DOC(Heat));
    py::class_<HeatEffect>(m, "HeatEffect", DOC(HeatEffect));
    py::class_<TemperFit>(m, "TemperFit", DOC(TemperFit));
    py::class_<TemperPoint>(m, "TemperPoint", DOC(TemperPoint));
    py::class_<TemperTable>(m, "TemperTable", DOC(TemperTable));
}

void define_temper(py::module_& m) {
    auto heat = declared<Heat>();
    define_record(heat, BACKSPRING_FIELD(Heat, temperature_c), BACKSPRING_FIELD(Heat, time_h));
    auto effect = declared<HeatEffect>();
    define_record(effect, BACKSPRING_FIELD(HeatEffect, hardness_hrc),
                  BACKSPRING_FIELD(HeatEffect, extrapolated_in_time));
    auto fit = declared<TemperFit>();
    define_record(fit, BACKSPRING_FIELD(TemperFit, time_constant),
                  BACKSPRING_FIELD(TemperFit, mean), BACKSPRING_FIELD(TemperFit, deviation),
                  BACKSPRING_FIELD(TemperFit, coefficients),
                  BACKSPRING_FIELD(TemperFit, spread_hrc), BACKSPRING_FIELD(TemperFit, coolest_c),
                  BACKSPRING_FIELD(TemperFit, hottest_c), BACKSPRING_FIELD(TemperFit, shortest_h),
                  BACKSPRING_FIELD(TemperFit, longest_h), BACKSPRING_FIELD(TemperFit, softest_hrc));
    auto point = declared<TemperPoint>();
    define_record(point, BACKSPRING_FIELD(TemperPoint, temper_c),
                  BACKSPRING_FIELD(TemperPoint, hardness_hrc));
    auto table = declared<TemperTable>();
    define_record(table, BACKSPRING_FIELD(TemperTable, points),
                  BACKSPRING_FIELD(TemperTable, hold_h));

    m.def("temper_parameter", &temper_parameter, py::arg("fit"), py::arg("heat"),
          DOC(temper_parameter));
    m.def("hardness_after_temper",
          py::overload_cast<const TemperFit&, const Heat&>(&hardness_after_temper), py::arg("fit"),
          py::arg("temper"), DOC(hardness_after_temper));
    m.def("hardness_after_temper",
          py::overload_cast<const TemperTable&, double, std::optional<double>>(
              &hardness_after_temper),
          py::arg("table"), py::arg("temper_c"), py::arg("time_h") = py::none(),
          DOC(hardness_after_temper));
    m.def("temper_for_hardness",
          py::overload_cast<const TemperFit&, double, double>(&temper_for_hardness), py::arg("fit"),
          py::arg("hardness_hrc"), py::arg("time_h"), DOC(temper_for_hardness));
    m.def("temper_for_hardness",
          py::overload_cast<const TemperTable&, double>(&temper_for_hardness), py::arg("table"),
          py::arg("hardness_hrc"), DOC(temper_for_hardness));
    m.def("hardness_after_heat",
          py::overload_cast<const TemperFit&, const Heat&, const Heat&>(&hardness_after_heat),
          py::arg("fit"), py::arg("temper"), py::arg("later"), DOC(hardness_after_heat));
    m.def("hardness_after_heat",
          py::overload_cast<const TemperTable&, double, double>(&hardness_after_heat),
          py::arg("table"), py::arg("temper_c"), py::arg("later_c"), DOC(hardness_after_heat));
}

}  // namespace backspring::python

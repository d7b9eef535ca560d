#include "backspring/fit/turning_test.hpp"

#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_turning_test(py::module_& m) {
    py::class_<TurnedReading>(m, "TurnedReading", DOC(TurnedReading));
    py::class_<TurningTest>(m, "TurningTest", DOC(TurningTest));
}

void define_turning_test(py::module_& m) {
    auto reading = declared<TurnedReading>();
    define_record(reading, BACKSPRING_FIELD(TurnedReading, quarter),
                  BACKSPRING_FIELD(TurnedReading, half_stop_mm),
                  BACKSPRING_FIELD(TurnedReading, closed_mm));
    auto result = declared<TurningTest>();
    define_record(result, BACKSPRING_FIELD(TurningTest, half_stop_mm),
                  BACKSPRING_FIELD(TurningTest, closed_mm),
                  BACKSPRING_FIELD(TurningTest, eccentricity_mm),
                  BACKSPRING_FIELD(TurningTest, oval_mm), BACKSPRING_FIELD(TurningTest, scatter_mm),
                  BACKSPRING_FIELD(TurningTest, half_stop_spread_mm),
                  BACKSPRING_FIELD(TurningTest, closed_spread_mm));
    m.def("turning_test", &turning_test, py::arg("readings"), DOC(turning_test));
}

}  // namespace backspring::python

#include "backspring/strength/pins.hpp"

#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_pins(py::module_& m) {
    py::class_<WorstPinForces>(m, "WorstPinForces", DOC(WorstPinForces));
    py::class_<PinInput>(m, "PinInput", DOC(PinInput));
    py::class_<LimitedStress>(m, "LimitedStress", DOC(LimitedStress));
    py::class_<PinStress>(m, "PinStress", DOC(PinStress));
}

void define_pins(py::module_& m) {
    auto worst = declared<WorstPinForces>();
    define_record(worst, BACKSPRING_FIELD(WorstPinForces, forces),
                  BACKSPRING_FIELD(WorstPinForces, middle_angle_deg),
                  BACKSPRING_FIELD(WorstPinForces, rear_angle_deg));
    auto input = declared<PinInput>();
    define_record(input, BACKSPRING_FIELD(PinInput, force_n), BACKSPRING_FIELD(PinInput, pin_mm),
                  BACKSPRING_FIELD(PinInput, spring_width_mm), BACKSPRING_FIELD(PinInput, liner_mm),
                  BACKSPRING_FIELD(PinInput, pin_yield_mpa),
                  BACKSPRING_FIELD(PinInput, spring_yield_mpa),
                  BACKSPRING_FIELD(PinInput, liner_yield_mpa));
    auto limited = declared<LimitedStress>();
    define_record(limited, BACKSPRING_FIELD(LimitedStress, stress_mpa),
                  BACKSPRING_FIELD(LimitedStress, limit_mpa),
                  BACKSPRING_FIELD(LimitedStress, margin));
    auto found = declared<PinStress>();
    define_record(found, BACKSPRING_FIELD(PinStress, shear),
                  BACKSPRING_FIELD(PinStress, spring_bearing),
                  BACKSPRING_FIELD(PinStress, liner_bearing));
    m.def("pin_stress", &pin_stress, py::arg("input"), DOC(pin_stress));
}

}  // namespace backspring::python

#include "backspring/check/verdict.hpp"

#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_verdict(py::module_& m) {
    py::class_<Surface>(m, "Surface", DOC(Surface));
    py::class_<Pins>(m, "Pins", DOC(Pins));
    py::class_<Hardness>(m, "Hardness", DOC(Hardness));
    py::class_<Margin>(m, "Margin", DOC(Margin));
}

void define_verdict(py::module_&) {
    auto surface = declared<Surface>();
    define_record(surface, BACKSPRING_FIELD(Surface, finish),
                  BACKSPRING_FIELD(Surface, kink_radius_mm),
                  BACKSPRING_FIELD(Surface, curve_radius_mm), BACKSPRING_FIELD(Surface, steel));
    auto pins = declared<Pins>();
    define_record(pins, BACKSPRING_FIELD(Pins, middle_mm), BACKSPRING_FIELD(Pins, rear_mm),
                  BACKSPRING_FIELD(Pins, liner_mm), BACKSPRING_FIELD(Pins, yield_mpa));
    auto hardness = declared<Hardness>();
    define_record(hardness, BACKSPRING_FIELD(Hardness, spring_hrc),
                  BACKSPRING_FIELD(Hardness, tang_hrc));
    auto margin = declared<Margin>();
    define_record(margin, BACKSPRING_FIELD(Margin, name), BACKSPRING_FIELD(Margin, value),
                  BACKSPRING_FIELD(Margin, limit), BACKSPRING_FIELD(Margin, unit),
                  BACKSPRING_FIELD(Margin, margin), BACKSPRING_FIELD(Margin, margin_low),
                  BACKSPRING_FIELD(Margin, station_mm), BACKSPRING_FIELD(Margin, blade_angle_deg),
                  BACKSPRING_FIELD(Margin, sources), BACKSPRING_FIELD(Margin, sentence));
}

}  // namespace backspring::python

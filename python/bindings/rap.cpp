#include "backspring/action/rap.hpp"

#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_rap(py::module_& m) {
    py::class_<Overtravel>(m, "Overtravel", DOC(Overtravel));
    py::class_<Rap>(m, "Rap", DOC(Rap));
}

void define_rap(py::module_&) {
    auto past = declared<Overtravel>();
    define_record(past, BACKSPRING_FIELD(Overtravel, angle_deg),
                  BACKSPRING_FIELD(Overtravel, stored_mj),
                  BACKSPRING_FIELD(Overtravel, friction_work_mj));
    auto found = declared<Rap>();
    define_record(found, BACKSPRING_FIELD(Rap, energy_mj), BACKSPRING_FIELD(Rap, past),
                  BACKSPRING_FIELD(Rap, edge_dip_mm), BACKSPRING_FIELD(Rap, clearance_left_mm));
}

}  // namespace backspring::python

#include "backspring/check/budget.hpp"

#include "backspring/check/stop_band.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_budget(py::module_& m) {
    py::class_<Ends>(m, "Ends", DOC(Ends));
    py::class_<StopBand>(m, "StopBand", DOC(StopBand));
    py::class_<BudgetRow>(m, "BudgetRow", DOC(BudgetRow));
}

void define_budget(py::module_& m) {
    auto ends = declared<Ends>();
    define_record(ends, BACKSPRING_FIELD(Ends, low), BACKSPRING_FIELD(Ends, high));
    auto band = declared<StopBand>();
    define_record(band, BACKSPRING_FIELD(StopBand, place), BACKSPRING_FIELD(StopBand, face_stated),
                  BACKSPRING_FIELD(StopBand, friction), BACKSPRING_FIELD(StopBand, stop_n),
                  BACKSPRING_FIELD(StopBand, force_n), BACKSPRING_FIELD(StopBand, blade_angle_deg),
                  BACKSPRING_FIELD(StopBand, reading_mm));
    auto row = declared<BudgetRow>();
    define_record(row, BACKSPRING_FIELD(BudgetRow, effect),
                  BACKSPRING_FIELD(BudgetRow, reading_low_mm),
                  BACKSPRING_FIELD(BudgetRow, reading_high_mm),
                  BACKSPRING_FIELD(BudgetRow, pull_share), BACKSPRING_FIELD(BudgetRow, settled_by));
    m.def("contact_budget", &contact_budget, py::arg("design"),
          py::call_guard<py::gil_scoped_release>(), DOC(contact_budget));
}

}  // namespace backspring::python

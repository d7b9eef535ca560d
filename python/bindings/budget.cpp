#include "backspring/check/budget.hpp"

#include "backspring/check/error_budget.hpp"
#include "backspring/check/stop_band.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_budget(py::module_& m) {
    py::class_<Ends>(m, "Ends", DOC(Ends));
    py::class_<StopBand>(m, "StopBand", DOC(StopBand));
    py::class_<BudgetRow>(m, "BudgetRow", DOC(BudgetRow));
    py::class_<BudgetStated>(m, "BudgetStated", DOC(BudgetStated));
    py::class_<BudgetSum>(m, "BudgetSum", DOC(BudgetSum));
    py::class_<ErrorBudget>(m, "ErrorBudget", DOC(ErrorBudget));
}

namespace {

void define_whole_budget(py::module_& m) {
    auto stated = declared<BudgetStated>();
    define_record(stated, BACKSPRING_FIELD(BudgetStated, pin_clearance),
                  BACKSPRING_FIELD(BudgetStated, pivot_clearance),
                  BACKSPRING_FIELD(BudgetStated, modulus_mpa));
    auto sum = declared<BudgetSum>();
    define_record(
        sum, BACKSPRING_FIELD(BudgetSum, reading_mm), BACKSPRING_FIELD(BudgetSum, reading_worst_mm),
        BACKSPRING_FIELD(BudgetSum, pull_share), BACKSPRING_FIELD(BudgetSum, pull_worst_share),
        BACKSPRING_FIELD(BudgetSum, reading_target_mm), BACKSPRING_FIELD(BudgetSum, beyond_target),
        BACKSPRING_FIELD(BudgetSum, closes_most));
    auto budget = declared<ErrorBudget>();
    define_record(budget, BACKSPRING_FIELD(ErrorBudget, rows), BACKSPRING_FIELD(ErrorBudget, sum));
    m.def("error_budget", &error_budget, py::arg("design"), py::arg("stated") = BudgetStated{},
          py::call_guard<py::gil_scoped_release>(), DOC(error_budget));
}

}  // namespace

void define_budget(py::module_& m) {
    auto ends = declared<Ends>();
    define_record(ends, BACKSPRING_FIELD(Ends, low), BACKSPRING_FIELD(Ends, high));
    auto band = declared<StopBand>();
    define_record(band, BACKSPRING_FIELD(StopBand, place), BACKSPRING_FIELD(StopBand, face_stated),
                  BACKSPRING_FIELD(StopBand, friction), BACKSPRING_FIELD(StopBand, stop_n),
                  BACKSPRING_FIELD(StopBand, force_n), BACKSPRING_FIELD(StopBand, blade_angle_deg),
                  BACKSPRING_FIELD(StopBand, reading_mm));
    auto row = declared<BudgetRow>();
    define_record(
        row, BACKSPRING_FIELD(BudgetRow, effect), BACKSPRING_FIELD(BudgetRow, reading_low_mm),
        BACKSPRING_FIELD(BudgetRow, reading_high_mm), BACKSPRING_FIELD(BudgetRow, pull_low_share),
        BACKSPRING_FIELD(BudgetRow, pull_high_share), BACKSPRING_FIELD(BudgetRow, settled_by));
    m.def("pull_share", &pull_share, py::arg("row"), DOC(pull_share));
    define_whole_budget(m);
}

}  // namespace backspring::python
